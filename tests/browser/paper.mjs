// Pages print: on A4, with what a printed copy must say, and without what only a screen can use.

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, equal, holds } from "./kit.mjs";

/** Prints the open pages: one of each kind for what each copy must say, all records for how long they are. */
export function paper(site) {
  const folder = mkdtempSync(join(tmpdir(), "booklet-"));
  const [path, sampled] = [join(folder, "page.pdf"), samples(site)];
  return {
    async look(page, name) {
      await reads(page, name);
      const most = mostSheets(name);
      if (most === null && !sampled.includes(name)) {
        return;
      }
      await page.pdf({ path, format: "A4" });
      const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
      if (sampled.includes(name)) {
        await check(`${name} prints`, () => says(text));
      }
      if (most !== null) {
        await check(`${name} prints on so many pages at most: ${most}`, async () => {
          const count = Number(/Pages:\s+(\d+)/.exec(execFileSync("pdfinfo", [path], { encoding: "utf8" }))[1]);
          holds(count <= most, `${count} pages`);
          await headsStay(page, text);
        });
      }
    },
    async close() {
      await check("there is a teaching sheet", () => holds(site.pages.some((name) => mostSheets(name) === 1), "there is none"));
      rmSync(folder, { recursive: true });
    },
  };
}

/** What every printed copy says, and what none shows. */
function says(text) {
  holds(text.includes("check the register"), "the printed copy does not say where to check it");
  holds(text.includes("Edition"), "the printed copy does not say its edition");
  equal(text.includes("Find a number"), false, "the box to find things is printed");
  everySheet(text);
}

/** On how many sides of paper a page may be printed: a record on both sides of a sheet, a teaching sheet on one. */
function mostSheets(name) {
  if (name.startsWith("teaching-")) {
    return 1;
  }
  return /^((fitting|part|body|conductor|notice)-|key)/.test(name) ? 2 : null;
}

/** No head is the last line of a sheet that another follows. */
async function headsStay(page, text) {
  const printed = text.split("\f").slice(0, -1);
  const heads = (await page.locator("h2, h3").allTextContents()).map((head) => head.trim());
  const last = printed.slice(0, -1).map((sheet) => sheet.trim().split("\n").at(-1).trim());
  equal(last.filter((line) => heads.includes(line)).join("; "), "", "heads at the foot of a sheet");
}

/** Each sheet of paper says its edition, its caution and where to check it: sheets part. */
export function everySheet(text, said = ["Caution:", "Edition", "printed copy: check the register"]) {
  const sheets = text.split("\f").slice(0, -1).map((sheet) => sheet.replace(/\s+/g, " "));
  for (const words of said) {
    const without = sheets.flatMap((sheet, index) => (sheet.includes(words) ? [] : [index + 1]));
    equal(without.join(" "), "", `sheets without ${words}`);
  }
}

/** Nothing that must be read is white on a fill: browsers print no fills unless they are told to. */
async function reads(page, name) {
  await page.emulateMedia({ media: "print" });
  await check(`${name} reads without its fills`, async () => {
    const pale = await page.evaluate(() => [...document.querySelectorAll("body *:not(svg *)")].filter((element) => {
      const [red, green, blue] = getComputedStyle(element).color.match(/[0-9.]+/g).map(Number);
      return element.checkVisibility() && Math.max(red, green, blue) > 0x60;
    }).slice(0, 3).map((element) => element.outerHTML.slice(0, 80)));
    equal(pale.join("\n"), "", "pale text");
  });
  await page.emulateMedia({ media: null });
}

/** A page of each kind. */
function samples(site) {
  const kinds = new Map(site.pages.map((name) => [name.split("-")[0], name]));
  return [...kinds.values()];
}
