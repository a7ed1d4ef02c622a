// The look-ups of the pages against the program's own answers, over grids of readings of the demo.

import { execFileSync } from "node:child_process";
import { check, equal, open } from "./kit.mjs";

const CATALOGUE = new URL("../../content", import.meta.url).pathname;

export async function agrees(browser, site, program) {
  const ask = (...question) =>
    JSON.parse(execFileSync(program, [...question, "--quiet", "--format", "json", "--catalogue", CATALOGUE], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }));
  await hand(browser, site, ask);
  await closed(browser, site, ask);
  await wear(browser, site, ask);
}

/** Readings of what is in a hand: each conductor's own size, off it, at the limit of the tolerance, and worn. */
function readings() {
  const sizes = [8, 9, 9.05, 12.5, 12.6, 12.85, 14, 14.2, 14.21, 15.8, 17.5, 21.8, 40];
  const seen = [{}, { shape: "round" }, { shape: "grooved" }, { shape: "rope" }, { magnet: "no" }, { magnet: "slight" },
    { magnet: "yes" }, { colour: "copper" }, { colour: "grey" }, { wires: 19 }, { wires: 7 }, { outer: 12 }, { wire: 2.8 }, { tolerance: 0.5 }];
  const alone = sizes.flatMap((one) => seen.map((rest) => ({ one, ...rest })));
  const pairs = [[12.85, 10.2], [12, 9.3], [12, 8], [12.4, 12.4], [14, 14.1], [12.9, 9.1], [12.85, 12.95], [12, 12.1]];
  return [...alone, ...pairs.flatMap(([one, two]) => [{ one, two }, { one, two, shape: "grooved" }])]
    .concat([9.3, 8.8, 10.9, 12.95, 13].flatMap((one) => [{ one, shape: "grooved" }, { one, shape: "grooved", tolerance: 0 }]));
}

function question({ one, two, tolerance, wires, outer, wire, shape, magnet, colour }) {
  const options = { "--diameter": one, "--tolerance": tolerance, "--wires": wires, "--outer-wires": outer, "--wire-diameter": wire,
    "--shape": shape, "--magnetic": magnet, "--colour": colour };
  const given = Object.entries(options).filter(([, value]) => value !== undefined).flatMap(([name, value]) => [name, String(value)]);
  return ["identify", ...given, ...(two === undefined ? [] : ["--diameter", String(two)])];
}

async function hand(browser, site, ask) {
  const { page, done } = await open(browser);
  await page.goto(site.address("hand.html"));
  const grid = readings();
  const found = await page.evaluate((grid) => {
    const form = document.querySelector("[data-tool=hand]");
    const table = JSON.parse(document.getElementById("hand-data").textContent);
    const fields = form.elements;
    const standing = fields.tolerance.value;
    return grid.map((reading) => {
      for (const name of ["one", "two", "wires", "outer", "wire", "shape", "magnet", "colour"]) {
        fields[name].value = reading[name] ?? "";
      }
      fields.tolerance.value = reading.tolerance ?? standing;
      form.dispatchEvent(new Event("input"));
      const links = [...form.querySelectorAll(".answer > ol > li > a")].map((link) => link.getAttribute("href"));
      return links.map((href) => table.conductors.find((conductor) => conductor.href === href).id).sort().join(" ");
    });
  }, grid);
  for (const [index, reading] of grid.entries()) {
    await check(`the page and the program agree on what ${JSON.stringify(reading)} can be`, () => {
      const answer = ask(...question(reading)).candidates.map((candidate) => candidate.conductor).sort().join(" ");
      equal(found[index], answer, "on the page");
    });
  }
  await check("what is no number is not passed over", async () => {
    await page.locator("#hand-one").fill("14.0");
    await page.locator("#hand-wires").fill("19 or so");
    equal(await page.locator(".answer").textContent(), "“19 or so” is not a number.", "answer");
  });
  await done();
}

async function closed(browser, site, ask) {
  const { page, done } = await open(browser);
  await page.goto(site.address("closed.html"));
  const stands = [];
  for (let reading = -12; reading <= 12; reading += 0.75) {
    stands.push(Number(reading.toFixed(2)));
  }
  const states = ["seated", "tensioned", "unknown"];
  const cases = await page.evaluate(([stands, states]) => {
    const form = document.querySelector("[data-tool=closed]");
    const fields = form.elements;
    const table = JSON.parse(document.getElementById(form.getAttribute("data-table")).textContent).cases;
    const named = (text) => (text.startsWith("all parts of") ? text : text.split(" ")[0]);
    return [...fields["case"].options].map((option) => {
      const { body, conductor } = table[Number(option.value)];
      fields["case"].value = option.value;
      const found = states.map((state) => stands.map((reading) => {
        fields.state.value = state;
        fields.reading.value = String(reading);
        form.dispatchEvent(new Event("input"));
        return [...form.querySelectorAll(".answer li a")].map((link) => named(link.textContent)).sort().join(", ");
      }));
      return { body, conductor, found };
    });
  }, [stands, states]);
  const named = (one) => (one.kit ? `all parts of ${one.kit}` : one.part);
  for (const { body, conductor, found } of cases) {
    await check(`the page and the program agree on what is inside ${body} on ${conductor}`, () => {
      states.forEach((state, nth) => stands.forEach((reading, index) => {
        const inside = ask("identify", "--body", body, "--conductor", conductor, `--stand-out=${reading}`, "--state", state).inside;
        const fits = inside.filter((one) => one.fits_reading).map(named).sort().join(", ");
        equal(found[nth][index], fits, `a stand-out of ${reading} mm, ${state}`);
      }));
    });
  }
  await done();
}

async function wear(browser, site, ask) {
  const { page, done } = await open(browser);
  await page.goto(site.address("wear.html"));
  const wires = await page.evaluate(() => [...document.querySelectorAll("[data-tool=wear]")].map((form) => form.getAttribute("data-table").slice(5, -5)));
  for (const wire of wires) {
    const heights = [11.7, 11.05, 10.5, 10.004, 9.6, 9.3, 8.95, 8.1];
    for (const height of heights) {
      await check(`the page and the program agree on ${wire} worn to ${height} mm`, async () => {
        await page.locator(`[id="wear-${wire}-h"]`).fill(String(height));
        const said = await page.locator(`[id="wear-${wire}-r"]`).textContent();
        const worn = ask("section", "--conductor", wire, "--worn-height", String(height)).worn;
        // Rounded twice: to the thousandth in the table, then as it is shown.
        const near = (name, value, places) => {
          const shown = Number(said.match(name)[1]);
          equal(Math.abs(shown - value) <= 0.5 * 10 ** -places + 0.0006, true, `${name} ${shown}, program ${value}`);
        };
        near(/Section left ([0-9.]+)/, worn.section_mm2, 1);
        near(/worn ([0-9.]+)/, worn.worn_percent, 1);
        near(/flat ([0-9.]+)/, worn.flat_width_mm, 2);
      });
    }
  }
  await done();
}
