// The register's pages, which are printed and signed: valid, accessible, and on paper with what must stand there.

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, equal, holds, open } from "./kit.mjs";
import { looks } from "./looks.mjs";
import { valid } from "./valid.mjs";

/** Pages that every register has, beside a call-in list for each holder who gives back or gets anything. */
const ALWAYS = ["approval.html", "current-cards.html", "notice-to-crews.html", "what-changed.html"];

export async function register(browser, site) {
  await check("the register has all its pages", () => {
    equal(site.pages.filter((name) => !name.startsWith("call-in-")).join(" "), ALWAYS.join(" "), "pages");
    holds(site.pages.length > ALWAYS.length, "call-in lists");
  });
  await valid(site);
  await looks(browser, site);
  await printed(browser, site);
}

async function printed(browser, site) {
  const folder = mkdtempSync(join(tmpdir(), "register-"));
  const { page, done } = await open(browser);
  for (const name of site.pages) {
    await check(`${name} of the register prints`, async () => {
      const path = join(folder, "page.pdf");
      await page.goto(site.address(name));
      const heading = await page.locator("h1").textContent();
      await page.pdf({ path, preferCSSPageSize: true });
      const about = execFileSync("pdfinfo", [path], { encoding: "utf8" });
      holds(/Page size:\s+59[45]\.\d+ x 84[12]/.test(about), `A4 is 595 × 842 points (ISO 216): ${about}`);
      const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
      for (const said of [heading, "check the register"]) {
        holds(text.includes(said), `${said} is printed`);
      }
      holds(name !== "notice-to-crews.html" || /Pages:\s+1\n/.test(about), `the notice to crews is one page: ${about}`);
    });
  }
  await done();
  rmSync(folder, { recursive: true });
}
