// The booklet in one file: the same pages, one shown at a time.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, equal, holds, open } from "./kit.mjs";
import { accessible } from "./looks.mjs";
import { everySheet } from "./paper.mjs";
import { valid } from "./valid.mjs";

export async function single(browser, path) {
  // Only one of its pages is shown at a time, and landmarks are told apart within that page.
  await valid({ pages: ["one file"], text: () => readFileSync(path, "utf8") }, { "unique-landmark": "off" });
  const { page, faults, done } = await open(browser, { viewport: { width: 390, height: 800 } });
  await check("one file opens on its first page", async () => {
    await page.goto(`file://${path}`);
    equal(await page.locator(".page:visible").count(), 1, "pages shown");
    await accessible(page);
  });
  await check("one file: a link shows its page", async () => {
    const link = page.locator(".page:visible a[href^='#']").first();
    const target = await link.getAttribute("href");
    await link.click();
    holds((await page.locator(".page:visible").getAttribute("id")) === target.slice(1).split("/")[0], target);
    equal(await page.locator("header nav [aria-current]").count(), await page.locator(`header nav a[href="${target.split("/")[0]}"]`).count(), "links to the page shown that say so");
  });
  await check("one file: the link past the header leaves the page that is shown", async () => {
    const shown = await page.locator(".page:visible").getAttribute("id");
    await page.locator("a.skip").focus();
    await page.keyboard.press("Enter");
    equal(await page.locator(".page:visible").getAttribute("id"), shown, "page shown");
  });
  await check("one file: every link leads to a place in it", async () => {
    const lost = await page.evaluate(() => [...document.querySelectorAll("a[href]")].map((link) => link.getAttribute("href")).filter((href) => !href.startsWith("#") || !document.getElementById(decodeURIComponent(href.slice(1)))));
    equal(lost.slice(0, 5).join(" "), "", "links that lead nowhere");
  });
  await check("one file: ids are there once", async () => {
    const twice = await page.evaluate(() => {
      const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
      return ids.filter((id, index) => ids.indexOf(id) !== index);
    });
    equal(twice.slice(0, 5).join(" "), "", "ids that are there twice");
  });
  await check("one file: Find works", async () => {
    await page.locator("#find").focus();
    await page.keyboard.type("cone");
    await page.waitForFunction(() => document.querySelector(".find-list a"));
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    equal(await page.locator(".page:visible").count(), 1, "pages shown");
  });
  await check("one file: a reading typed into Find is looked up", async () => {
    await page.locator("#find").fill("14.0 mm 19 wires");
    await page.locator(".find-list a").first().click();
    equal(await page.locator(".page:visible").getAttribute("id"), "hand", "page shown");
    equal(await page.locator("[id='hand/hand-one']").inputValue(), "14.0", "the reading");
  });
  await check("one file prints as the whole booklet, each page on a sheet of its own", async () => {
    const folder = mkdtempSync(join(tmpdir(), "booklet-"));
    const paper = join(folder, "booklet.pdf");
    await page.pdf({ path: paper, format: "A4" });
    const text = execFileSync("pdftotext", ["-layout", paper, "-"], { encoding: "utf8" });
    const heads = await page.locator(".page > h1").allTextContents();
    const sheets = text.split("\f").map((sheet) => sheet.replace(/\s+/g, " "));
    const printed = heads.map((head) => sheets.findIndex((sheet) => sheet.includes(head.replace(/\s+/g, " ").trim().slice(0, 40))));
    equal(printed.filter((at) => at < 0).length, 0, "pages that are not printed");
    holds(sheets.length > heads.length, `${sheets.length} sheets of ${heads.length} pages`);
    everySheet(text);
    rmSync(folder, { recursive: true });
  });
  await check("one file complains of nothing", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}
