// The look-ups of the pages against the program's own answers, on readings by chance of the demo. What the program
// answers is proved elsewhere, by a second way (tests/confusion, tests/crosscheck).

import { execFileSync } from "node:child_process";
import { check, equal, holds, open } from "./kit.mjs";

const CATALOGUE = new URL("../../content", import.meta.url).pathname;
const READINGS = 700;
const STAND_OUTS = 500;

export async function agrees(browser, site, program) {
  const ask = (...question) =>
    JSON.parse(execFileSync(program, [...question, "--quiet", "--format", "json", "--catalogue", CATALOGUE], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }));
  await hand(browser, site, ask);
  await closed(browser, site, ask);
  await wear(browser, site, ask);
}

/** Numbers by chance from 0 to 1, the same in each run (mulberry32, from memory). */
function chance(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function one(random, list) {
  return list[Math.floor(random() * list.length)];
}

/** Rounded as somebody reads a caliper: to a hundredth, now and then finer. */
function read(random, size) {
  return Number(size.toFixed(random() < 0.8 ? 2 : 4));
}

/** Readings of what is in a hand: near the size of a conductor, at its limits, worn, and with all else that is looked at. */
function handReadings(random, sizes) {
  const off = () => one(random, [0, 0.05, -0.05, 0.1, -0.1, 0.2, -0.2, 0.21, random() * 2 - 1, -random() * 4]);
  const maybe = (share, value) => (random() < share ? value() : undefined);
  return Array.from({ length: READINGS }, () => {
    const size = one(random, [...sizes, 30]);
    const [first, second] = [size + off(), size + off()].map((reading) => Math.max(0.5, read(random, reading)));
    return {
      one: first,
      two: maybe(0.4, () => second),
      tolerance: maybe(0.4, () => one(random, [0, 0.05, 0.2, 0.5, 1.5])),
      wires: maybe(0.15, () => one(random, [1, 7, 19, 37, 133])),
      outer: maybe(0.15, () => one(random, [1, 6, 12, 18])),
      wire: maybe(0.15, () => read(random, one(random, [2.5, 2.52, 2.8, 2.9, 3.0, 3.15]))),
      shape: maybe(0.3, () => one(random, ["round", "grooved", "rope"])),
      magnet: maybe(0.3, () => one(random, ["no", "slight", "yes"])),
      scratch: maybe(0.3, () => one(random, ["copper", "grey"])),
    };
  });
}

function question({ one, two, tolerance, wires, outer, wire, shape, magnet, scratch }) {
  const options = { "--diameter": one, "--tolerance": tolerance, "--wires": wires, "--outer-wires": outer, "--wire-diameter": wire,
    "--shape": shape, "--magnetic": magnet, "--scratch": scratch };
  const given = Object.entries(options).filter(([, value]) => value !== undefined).flatMap(([name, value]) => [name, String(value)]);
  return ["identify", ...given, ...(two === undefined ? [] : ["--diameter", String(two)])];
}

async function hand(browser, site, ask) {
  const { page, done } = await open(browser);
  await page.goto(site.address("hand.html"));
  const sizes = await page.locator("td[data-label=Measures]").evaluateAll((all) => all.map((cell) => Number.parseFloat(/[0-9.]+/.exec(cell.textContent)[0])));
  holds(sizes.length > 4, "sizes of conductors");
  const grid = handReadings(chance(1), sizes);
  const found = await page.evaluate((grid) => {
    const form = document.querySelector("[data-tool=hand]"), fields = form.elements;
    const standing = fields.tolerance.value;
    const says = (within, selector, own) => [...within.querySelectorAll(selector)].map(own);
    return grid.map((reading) => {
      for (const name of ["one", "two", "wires", "outer", "wire", "shape", "magnet", "scratch"]) {
        fields[name].value = reading[name] ?? "";
      }
      fields.tolerance.value = reading.tolerance ?? standing;
      form.dispatchEvent(new Event("input"));
      return {
        candidates: says(form, ".answer > ol > li", (item) => ({
          conductor: item.querySelector("a").getAttribute("href").replace(/^conductor-|\.html$/g, ""),
          fittings: says(item, "a[href^=fitting-]", (link) => link.getAttribute("href").replace(/^fitting-|\.html$/g, "")),
          tell_apart: says(item, ".apart", (line) => `from ${line.dataset.from}: ${line.querySelector("span").textContent}`),
          remarks: says(item, ".remark", (line) => line.textContent),
        })),
        remarks: says(form, ".answer > [data-says]", (line) => line.dataset.says),
      };
    });
  }, grid);
  const answers = grid.map((reading) => ask(...question(reading)));
  for (const [index, reading] of grid.entries()) {
    await check(`the page and the program agree on what ${JSON.stringify(reading)} can be`, () => {
      const { candidates, remarks = [] } = answers[index];
      const told = candidates.map(({ conductor, fittings, tell_apart, remarks = [] }) => ({ conductor, fittings, tell_apart, remarks }));
      equal(JSON.stringify(found[index]), JSON.stringify({ candidates: told, remarks }), "on the page");
    });
  }
  await check("readings by chance get all sorts of answers", () => {
    const counts = new Set(answers.map(({ candidates }) => Math.min(candidates.length, 3)));
    equal([...counts].sort().join(" "), "0 1 2 3", "numbers of candidates");
    for (const words of ["differ by", "no conductor"]) {
      holds(answers.some(({ remarks = [] }) => remarks.some((remark) => remark.includes(words))), words);
    }
    holds(answers.some(({ candidates }) => candidates.some(({ remarks = [] }) => remarks.length)), "worn wires");
  });
  await check("what is no number is not passed over", async () => {
    await page.locator("[name=one]").fill("14.0");
    await page.locator("[name=wires]").fill("19 or so");
    equal(await page.locator(".answer").textContent(), "“19 or so” is not a number.", "answer");
  });
  await check("what no reading can be is refused", async () => {
    await page.locator("[name=wires]").fill("19");
    await page.locator("[name=one]").fill("-14");
    equal(await page.locator(".answer").textContent(), "A diameter is from 0.1 to 200 mm.", "answer");
  });
  await done();
}

async function closed(browser, site, ask) {
  const { page, done } = await open(browser);
  await page.goto(site.address("closed.html"));
  const cases = await page.evaluate(() => JSON.parse(document.getElementById("closed-data").textContent).cases.map(({ body, conductor }) => ({ body, conductor })));
  const random = chance(2);
  const grid = Array.from({ length: STAND_OUTS }, () => ({
    nth: Math.floor(random() * cases.length),
    reading: read(random, random() * 26 - 13),
    state: one(random, ["seated", "tensioned", "unknown"]),
    tolerance: one(random, [0, 0.2, 0.5, 0.5, 1]),
  }));
  const found = await page.evaluate((grid) => {
    const form = document.querySelector("[data-tool=closed]"), fields = form.elements;
    const named = (link) => (link.textContent.startsWith("all parts of") ? link.textContent : link.textContent.split(" ")[0]);
    const names = (selector) => [...form.querySelectorAll(selector)].map(named);
    return grid.map(({ nth, reading, state, tolerance }) => {
      Object.assign(fields["case"], { value: String(nth) });
      fields.state.value = state;
      fields.tolerance.value = String(tolerance);
      fields.reading.value = String(reading);
      form.dispatchEvent(new Event("input"));
      return { fits: names(".verdicts a"), out: names(".ruled-out a"), remark: form.querySelector("[data-says]").dataset.says };
    });
  }, grid);
  const named = (one) => (one.kit ? `all parts of ${one.kit}` : one.part);
  const said = new Set();
  for (const [index, { nth, reading, state, tolerance }] of grid.entries()) {
    const { body, conductor } = cases[nth];
    await check(`the page and the program agree on ${body} on ${conductor}: ${reading} mm ± ${tolerance}, ${state}`, () => {
      const answer = ask("identify", "--body", body, "--conductor", conductor, `--stand-out=${reading}`, "--state", state, "--tolerance", String(tolerance));
      said.add(answer.remarks[0]);
      const fits = (wanted) => answer.inside.filter((one) => one.fits_reading === wanted).map(named);
      equal(JSON.stringify(found[index]), JSON.stringify({ fits: fits(true), out: fits(false), remark: answer.remarks[0] }), "on the page");
    });
  }
  await check("stand-outs by chance get all sorts of answers", () => equal(said.size >= 3, true, "three remarks"));
  await done();
}

async function wear(browser, site, ask) {
  const { page, done } = await open(browser);
  await page.goto(site.address("wear.html"));
  const wires = await page.evaluate(() => [...document.querySelectorAll("[data-tool=wear]")].map((form) => form.getAttribute("data-table").slice("wearing-data-".length)));
  for (const wire of wires) {
    const heights = [11.7, 11.05, 10.5, 10.004, 9.6, 9.3, 8.95, 8.1];
    for (const height of heights) {
      await check(`the page and the program agree on ${wire} worn to ${height} mm`, async () => {
        await page.locator(`[id="wearing-height-${wire}"]`).fill(String(height));
        const said = await page.locator(`[id="wearing-answer-${wire}"]`).textContent();
        const worn = ask("section", "--conductor", wire, "--worn-height", String(height)).worn;
        // Rounded twice: to the thousandth in the table, then as it is shown. No more is said to be left than there is.
        const within = (name, value, least, most) => {
          const shown = Number(said.match(name)[1]);
          const off = shown - value;
          equal(off >= least - 0.0006 && off <= most + 0.0006, true, `${name} ${shown}, program ${value}`);
        };
        within(/Section left ([0-9.]+)/, worn.section_mm2, -0.1, 0);
        within(/worn ([0-9.]+)/, worn.worn_percent, 0, 0.1);
        within(/flat ([0-9.]+)/, worn.flat_width_mm, -0.005, 0.005);
      });
    }
  }
  await done();
}
