// How long pages of a large catalogue take to open and to find something in, in Chromium with its processor slowed down
// four times, about what a cheap phone is to an office machine (common practice, no source). Prints, and asserts nothing.
// Needs what tests/browser/run installs. `node tests/bench/booklet.mjs FOLDER`; the folder is from `cargo bench --bench booklet`.

import { statSync } from "node:fs";
import { resolve } from "node:path";
import { launch, open } from "../browser/kit.mjs";

const SLOWER = 4;
const TYPED = ["c-0123-2", "c0777/1", "copper 19", "cone", "gripping 12.5", "tensioned", "14.0 mm 19 wires"];
const folder = resolve(process.argv[2]);

const browser = await launch();
const { page, faults, done } = await open(browser, { viewport: { width: 390, height: 844 } });
const session = await page.context().newCDPSession(page);
await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });

for (const name of ["index.html", "closed.html", "closed-B-0002.html", "numbers.html", "numbers-1.html", "hand.html", "current.html", "look-alikes.html"]) {
  try {
    const bytes = statSync(`${folder}/booklet/${name}`).size;
    const began = performance.now();
    await page.goto(`file://${folder}/booklet/${name}`);
    console.log(`${name}: ${(bytes / 1e3).toFixed(0)} kB, open in ${(performance.now() - began).toFixed(0)} ms`);
  } catch {
    console.log(`${name}: not there`);
  }
}

await page.goto(`file://${folder}/booklet/index.html`);
const loaded = performance.now();
await page.locator("#find").focus();
await page.keyboard.type("x");
await page.waitForFunction(() => document.querySelector(".find-count").textContent !== "");
console.log(`index.js: ${(statSync(`${folder}/booklet/index.js`).size / 1e3).toFixed(0)} kB, ready to find in ${(performance.now() - loaded).toFixed(0)} ms`);
for (const text of TYPED) {
  const took = await page.evaluate((text) => {
    const box = document.getElementById("find");
    return [...text].map((_, at) => {
      box.value = text.slice(0, at + 1);
      const began = performance.now();
      box.dispatchEvent(new Event("input"));
      document.body.getBoundingClientRect();
      return performance.now() - began;
    });
  }, text);
  const found = await page.locator(".find-count").textContent();
  console.log(`"${text}": ${found}; the slowest of ${took.length} letters ${Math.max(...took).toFixed(0)} ms, all ${took.reduce((sum, one) => sum + one, 0).toFixed(0)} ms`);
}
console.log(faults.join("\n"));
await done();
await browser.close();
