// Pages print: on A4, with what a printed copy must say, and without what only a screen can use.

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, equal, holds, open } from "./kit.mjs";

export async function paper(browser, site) {
  const folder = mkdtempSync(join(tmpdir(), "booklet-"));
  const { page, done } = await open(browser);
  for (const name of samples(site)) {
    await check(`${name} prints`, async () => {
      const path = join(folder, "page.pdf");
      await page.goto(site.address(name));
      await page.pdf({ path, format: "A4" });
      const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
      holds(text.includes("Check the register"), "the printed copy does not say where to check it");
      holds(text.includes("Edition"), "the printed copy does not say its edition");
      equal(text.includes("Find a number"), false, "the box to find things is printed");
      everySheet(text);
    });
  }
  await dark(page, site);
  await pages(page, site, folder);
  await done();
  rmSync(folder, { recursive: true });
}

/** Each sheet of paper says its edition, its caution and where to check it: sheets part. */
export function everySheet(text, said = ["Caution:", "Edition", "Check the register"]) {
  const sheets = text.split("\f").slice(0, -1).map((sheet) => sheet.replace(/\s+/g, " "));
  for (const words of said) {
    const without = sheets.flatMap((sheet, index) => (sheet.includes(words) ? [] : [index + 1]));
    equal(without.join(" "), "", `sheets without ${words}`);
  }
}

/** Nothing that must be read is white on a fill: browsers print no fills unless they are told to. */
async function dark(page, site) {
  await page.emulateMedia({ media: "print" });
  for (const name of site.pages) {
    await page.goto(site.address(name));
    await check(`${name} reads without its fills`, async () => {
      const pale = await page.evaluate(() => [...document.querySelectorAll("body *:not(svg *)")].filter((element) => {
        const [red, green, blue] = getComputedStyle(element).color.match(/[0-9.]+/g).map(Number);
        return element.checkVisibility() && Math.max(red, green, blue) > 0x60;
      }).slice(0, 3).map((element) => element.outerHTML.slice(0, 80)));
      equal(pale.join("\n"), "", "pale text");
    });
  }
}

/** A record prints on two sides of a sheet at most, a teaching sheet on one. */
async function pages(page, site, folder) {
  const records = site.pages.filter((name) => /^((fitting|part|body|conductor|notice)-|key)/.test(name));
  const sheets = site.pages.filter((name) => name.startsWith("teaching-"));
  holds(sheets.length > 0, "there is no teaching sheet");
  for (const [names, most] of [[records, 2], [sheets, 1]]) {
    for (const name of names) {
      await check(`${name} prints on so many pages at most: ${most}`, async () => {
        const path = join(folder, "record.pdf");
        await page.goto(site.address(name));
        await page.pdf({ path, format: "A4" });
        const count = Number(/Pages:\s+(\d+)/.exec(execFileSync("pdfinfo", [path], { encoding: "utf8" }))[1]);
        holds(count <= most, `${count} pages`);
        const printed = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" }).split("\f").slice(0, -1);
        const heads = (await page.locator("h2, h3").allTextContents()).map((head) => head.trim());
        const last = printed.slice(0, -1).map((sheet) => sheet.trim().split("\n").at(-1).trim());
        equal(last.filter((line) => heads.includes(line)).join("; "), "", "heads at the foot of a sheet");
      });
    }
  }
}

/** The first page of each kind. */
function samples(site) {
  const kinds = new Map(site.pages.map((name) => [name.split("-")[0], name]));
  return [...kinds.values()];
}
