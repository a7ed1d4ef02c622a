// Every page at three widths, light and dark: nothing overflows (WCAG 2.2, success criterion 1.4.10), nothing
// complains, and axe-core finds no fault under WCAG 2.2, levels A and AA; one page of each kind too in the colours
// that a reader forces, and with its look-ups answered.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { check, equal, holds, open } from "./kit.mjs";
import { noSideways } from "./small.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const WIDTHS = [320, 390, 1280];
/** Where axe-core looks: each page narrow and light, and wide and dark. */
const EXAMINED = ["320 light", "1280 dark"];

/** Opens every page, and lets others look at it while it is open: to open a page once more takes longer than most looks. */
export async function looks(browser, site, others = []) {
  const { page, faults, done } = await open(browser, { reducedMotion: "reduce" });
  for (const name of site.pages) {
    faults.length = 0;
    await page.goto(site.address(name));
    for (const colorScheme of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme });
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 800 });
        await check(`${name} at ${width} px, ${colorScheme}`, async () => {
          await stays(page, width);
          if (EXAMINED.includes(`${width} ${colorScheme}`)) {
            await accessible(page);
          }
        });
        if (colorScheme === "light") {
          await noSideways(page, `${name} at ${width} px`);
        }
      }
    }
    await check(`${name} complains of nothing`, async () => equal(faults.join("\n"), "", "faults"));
    await page.emulateMedia({ colorScheme: "light" });
    for (const other of others) {
      await other.look(page, name);
    }
  }
  for (const other of others) {
    await other.close();
  }
  await forced(page, site);
  await answered(page, site, faults);
  await done();
}

/** Readings that give long answers, by page. */
const ANSWERED = { "hand.html": "#?one=14.0", "closed.html": "#?case=0&reading=2.5", "wear.html": "#?flat=6.0", "current.html": "#?number=ST-4080&code=123456" };

/** The page of each kind with the most dangers, in the colours that a reader forces: nothing vanishes in them. */
async function forced(page, site) {
  await page.emulateMedia({ forcedColors: "active", colorScheme: "dark" });
  await page.setViewportSize({ width: 390, height: 800 });
  const dangers = (name) => site.text(name).split("hidden-danger").length;
  const kinds = [...site.pages].sort((one, other) => dangers(one) - dangers(other)).map((name) => [name.split("-")[0], name]);
  for (const name of new Map(kinds).values()) {
    await page.goto(site.address(name));
    await check(`${name} in forced colours`, async () => {
      await accessible(page);
      const lost = await page.evaluate(() => {
        const plain = (element) => getComputedStyle(element).color === getComputedStyle(document.documentElement).backgroundColor;
        return [...document.querySelectorAll("body *:not(svg *)")].filter((element) => element.checkVisibility() && plain(element)).slice(0, 3).map((element) => element.outerHTML.slice(0, 80));
      });
      equal(lost.join("\n"), "", "letters in the colour of the page");
    });
  }
  await page.emulateMedia({ forcedColors: "none" });
}

/** Look-ups with their answers. */
async function answered(page, site, faults) {
  for (const [name, asked] of Object.entries(ANSWERED).filter(([name]) => site.pages.includes(name))) {
    await page.goto("about:blank");
    await page.goto(site.address(name) + asked);
    for (const colorScheme of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme });
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 800 });
        await check(`${name} with an answer at ${width} px, ${colorScheme}`, async () => {
          holds(await page.locator(".answer").first().textContent(), "no answer");
          await stays(page, width);
          await accessible(page);
        });
      }
    }
  }
  await check("answers complain of nothing", async () => equal(faults.join("\n"), "", "faults"));
}

/** Nothing makes the page itself scroll sideways (WCAG 2.2, success criterion 1.4.10). */
async function stays(page, width) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  holds(wide <= width, `the page is ${wide} px wide`);
}

export async function accessible(page) {
  // Half a megabyte: once a page.
  if (!(await page.evaluate(() => "axe" in window))) {
    await page.evaluate(axe);
  }
  const found = await page.evaluate((tags) => window.axe.run(document, { runOnly: { type: "tag", values: tags }, resultTypes: ["violations"], preload: false }), TAGS);
  const faults = found.violations.map((fault) => `${fault.id}: ${fault.help}\n  ${fault.nodes.slice(0, 3).map((node) => node.html.slice(0, 160) + " " + (node.any[0]?.message ?? "")).join("\n  ")}`);
  equal(faults.join("\n"), "", "axe");
}
