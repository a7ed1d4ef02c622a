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
    });
  }
  await done();
  rmSync(folder, { recursive: true });
}

/** The first page of each kind. */
function samples(site) {
  const kinds = new Map(site.pages.map((name) => [name.split("-")[0], name]));
  return [...kinds.values()];
}
