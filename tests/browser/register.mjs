// The register's pages, which are printed and signed: valid, accessible, and on paper with what must stand there.

import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { check, equal, holds, open } from "./kit.mjs";
import { looks } from "./looks.mjs";
import { everySheet } from "./paper.mjs";
import { valid } from "./valid.mjs";

/** Pages that every register has, beside a call-in list for each holder who gives back or gets anything. */
const ALWAYS = ["approval.html", "current-cards.html", "follow-up.html", "notice-to-crews.html", "what-changed.html"];

export async function register(browser, site, program) {
  await check("the register has all its pages", () => {
    equal(site.pages.filter((name) => !name.startsWith("call-in-")).join(" "), ALWAYS.join(" "), "pages");
    holds(site.pages.length > ALWAYS.length, "call-in lists");
  });
  await valid(site);
  await looks(browser, site, [printed()]);
  await fullNotice(browser, program);
}

/** Each page is printed on A4, with what each sheet of it must say. */
function printed() {
  const folder = mkdtempSync(join(tmpdir(), "register-"));
  const path = join(folder, "page.pdf");
  return {
    async look(page, name) {
      await check(`${name} of the register prints`, async () => {
        const heading = await page.locator("h1").textContent();
        await page.pdf({ path, preferCSSPageSize: true });
        const about = execFileSync("pdfinfo", [path], { encoding: "utf8" });
        holds(/Page size:\s+59[45]\.\d+ x 84[12]/.test(about), `A4 is 595 × 842 points (ISO 216): ${about}`);
        const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
        const foot = (await page.locator("footer").textContent()).split(" · ");
        everySheet(text, [foot.at(-2).trim(), "check the register"]);
        for (const said of [heading, "check the register"]) {
          holds(text.includes(said), `${said} is printed`);
        }
        holds(name !== "notice-to-crews.html" || /Pages:\s+1\n/.test(about), `the notice to crews is one page: ${about}`);
      });
    },
    async close() {
      rmSync(folder, { recursive: true });
    },
  };
}

/** More cards change at once than one page holds: the notice says how many more. */
async function fullNotice(browser, program) {
  const folder = mkdtempSync(join(tmpdir(), "notice-"));
  const fittings = Array.from({ length: 12 }, (_, nth) => nth + 1);
  const write = (path, text) => {
    mkdirSync(join(folder, "content", path, ".."), { recursive: true });
    writeFileSync(join(folder, "content", path), text);
  };
  const steps = (words) => fittings.forEach((nth) => write(`fittings/${nth}.yaml`, `number: F-${nth}\nname: Dead-end with a name of many words ${nth}\nfamily: cone-dead-end\nconductor: wire-95\nparts: [B-${nth}, C-${nth}]\nsteps: [Read the ${words} tag., Push the ${words} wire in., Close the ${words} body., Measure the ${words} stand-out.]\ncomplete_without: { keys: [reject_if, line_tension_max_kN, holding_load_kN, proven_on, insertion_mm, tail_mm, stand_out], because: an example }\n`));
  const run = (...options) => execFileSync(program, [...options, "--quiet", "--catalogue", join(folder, "content")], { stdio: "ignore" });
  const issue = (edition) => run("issue", "--edition", edition, "--date", "2026-01-01", "--checked-by", "A. Reed", "--approved-by", "B. Holm", "--because", "an example");
  try {
    write("catalogue.yaml", "title: Many\nowner: Example railway\nedition: e2\ndate: 2026-01-01\ncaution: Example, not for use.\n");
    write("conductors/wire.yaml", "id: wire-95\nname: Wire 95\nduty: other\nmaterial: copper-hard-drawn\nconstruction: { stranded: { wires: 19, wire_diameter_mm: 2.50 } }\n");
    fittings.forEach((nth) => write(`parts/${nth}.yaml`, `number: B-${nth}\nname: Body\nrole: body\nmaterial: aluminium-bronze\n---\nnumber: C-${nth}\nname: Cone\nrole: cone\nmaterial: bronze-soft\nstamp: "${10 + nth}"\ngeometry: { collet: { bore_mm: 12.8, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5, stand_out_at_bore_mm: 6.0 } }\n`));
    steps("same");
    issue("e1");
    steps("other");
    issue("e2");
    run("render", "--preview-dpi", "30", "--output", join(folder, "output"));
    const { page, done } = await open(browser);
    await check("a notice of more cards than one page holds is one page, and names the others", async () => {
      const path = join(folder, "notice.pdf");
      await page.goto(`file://${join(folder, "output/register/notice-to-crews.html")}`);
      const rows = await page.locator("tbody tr").count();
      holds(rows >= 3 && rows < fittings.length, `${rows} cards`);
      const words = await page.locator("main").textContent();
      holds(words.includes(`And ${fittings.length - rows} more: `), "how many more");
      equal(fittings.filter((nth) => !new RegExp(`F-${nth}\\b`).test(words)).join(), "", "cards that are not named");
      await page.pdf({ path, preferCSSPageSize: true });
      const about = execFileSync("pdfinfo", [path], { encoding: "utf8" });
      equal(/Pages:\s+(\d+)/.exec(about)[1], "1", "pages");
    });
    await done();
  } finally {
    rmSync(folder, { recursive: true });
  }
}
