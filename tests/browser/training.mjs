// The pages for the training cell: valid, accessible, on paper, with links that lead somewhere, and pupils' pages without a key.

import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { check, equal, holds, open } from "./kit.mjs";
import { looks } from "./looks.mjs";
import { everySheet } from "./paper.mjs";
import { valid } from "./valid.mjs";

export async function training(browser, site) {
  const named = (start) => site.pages.filter((name) => name.startsWith(start));
  await check("training has all its pages", () => {
    holds(site.pages.includes("index.html"), "an index");
    equal(named("quiz-").length, 2, "quizzes: the demo has two groups");
    equal(named("key-").length, 2, "keys");
    holds(named("assessment-").length > 10 && named("family-").length > 3, "assessment sheets");
  });
  await valid(site);
  await looks(browser, site, [leads(site), printed()]);
  await answered(browser, site, named("quiz-"));
}

/** Every link leads to a file; no pupil's page leads to a key, nor to a page that does. */
function leads(site) {
  return {
    async look(page, name) {
      await check(`${name} of training: every link leads somewhere`, async () => {
        const links = await page.locator("a[href]").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
        const folder = dirname(fileURLToPath(site.address(name)));
        equal(links.filter((link) => !existsSync(resolve(folder, decodeURIComponent(link)))).join(" "), "", "links that do not");
        holds(!name.startsWith("quiz-") || links.length === 0, `${links.join(" ")} on a pupil's page`);
      });
    },
    async close() {},
  };
}

/** A quiz is answered by keyboard alone, one answer a question. */
async function answered(browser, site, quizzes) {
  const { page, done } = await open(browser);
  for (const name of quizzes) {
    await check(`${name} is answered by keyboard`, async () => {
      await page.goto(site.address(name));
      const questions = await page.locator("fieldset").count();
      holds(questions === 12, `${questions} questions`);
      for (let question = 0; question < questions; question += 1) {
        await page.keyboard.press("Tab");
        await page.keyboard.press("Space");
        await page.keyboard.press("ArrowDown");
      }
      equal(await page.locator("input:checked").count(), questions, "answers");
      equal(await page.locator("script").count(), 0, "scripts");
    });
  }
  await done();
}

/** Each page is printed on A4, with what each sheet of it must say. */
function printed() {
  const folder = mkdtempSync(join(tmpdir(), "training-"));
  const path = join(folder, "page.pdf");
  return {
    async look(page, name) {
      await check(`${name} of training prints`, async () => {
        const caution = await page.locator("footer").textContent();
        await page.pdf({ path, preferCSSPageSize: true });
        const about = execFileSync("pdfinfo", [path], { encoding: "utf8" });
        holds(/Page size:\s+59[45]\.\d+ x 84[12]/.test(about), `A4 is 595 × 842 points (ISO 216): ${about}`);
        const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
        everySheet(text, [caution.split(" · ").at(-2).trim(), "check the register", "edition 2026-2"]);
        const said = (words) => text.replace(/\s+/g, " ").includes(words);
        for (const words of ["check the register", caution.split(" · ").at(-2).trim(), "edition 2026-2"]) {
          holds(said(words), `${words} is printed`);
        }
        holds(/check [0-9A-Z]{6}|draft, not issued/.test(text), "issue and check code, or that it is a draft");
      });
    },
    async close() {
      rmSync(folder, { recursive: true });
    },
  };
}
