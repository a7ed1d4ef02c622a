// What somebody wants of the booklet at the line, on a phone: each is done by touch and by keyboard in less than four
// actions from the first page. An action is a tap, a filled field, a choice in a list, or a key that sends what was
// typed; to move with Tab is none, nor is to look. What must come out is what the program and the records say.

import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { check, equal, holds, open } from "./kit.mjs";

const CONTENT = new URL("../../content", import.meta.url).pathname;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const MOST = 3;

export async function tasks(browser, site, program) {
  const ask = (...question) =>
    JSON.parse(execFileSync(program, [...question, "--quiet", "--format", "json", "--catalogue", CONTENT], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }));
  for (const [by, hand] of [["touch", touch], ["keyboard", keyboard]]) {
    for (const [name, task] of Object.entries({ stamp, conductor, card, flat, closed })) {
      const { page, faults, done } = await open(browser, PHONE);
      await check(`${name}, by ${by}, in less than four actions`, async () => {
        await page.goto(site.address("index.html"));
        const doing = hand(page);
        await task(page, doing, ask);
        holds(doing.actions() <= MOST, `${doing.actions()} actions`);
        equal(faults.join("\n"), "", "faults");
      });
      await done();
    }
  }
}

/** Actions by touch. */
function touch(page) {
  let actions = 0;
  const act = async (doing) => {
    actions += 1;
    await doing;
  };
  return {
    actions: () => actions,
    find: async (text) => {
      await act(page.locator("#find").fill(text));
      await page.locator(".find-list a").first().waitFor();
      await act(page.locator(".find-list a").first().tap());
    },
    follow: (link) => act(link.tap()),
    choose: (list, label) => act(list.selectOption({ label })),
  };
}

/** The same by keyboard: what is used must be reached with Tab. */
function keyboard(page) {
  let actions = 0;
  const reach = async (what) => {
    for (let presses = 0; presses < 200; presses += 1) {
      if (await what.evaluate((element) => element === document.activeElement)) {
        return;
      }
      await page.keyboard.press("Tab");
    }
    throw new Error("it is not reached with Tab");
  };
  return {
    actions: () => actions,
    find: async (text) => {
      await reach(page.locator("#find"));
      await page.keyboard.type(text);
      await page.locator(".find-list a").first().waitFor();
      await page.keyboard.press("Enter");
      actions += 2;
    },
    follow: async (link) => {
      await reach(link);
      await page.keyboard.press("Enter");
      actions += 1;
    },
    choose: async (list, label) => {
      await reach(list);
      await page.keyboard.type(label);
      actions += 1;
    },
  };
}

/** From the stamp on a gripping part to what must not go in. */
async function stamp(page, doing, ask) {
  const { cases } = ask("mixups").bodies.find(({ body }) => body === "ST-4101");
  const { fitting } = cases.find((one) => one.right && one.part === "ST-4103" && one.verdict === "grips");
  const stamped = yaml("parts").find((record) => /^number: ST-4103$/m.test(record)).match(/^stamp: "?([^"\n]+)"?$/m)[1];
  await doing.find(stamped);
  await page.waitForURL(new RegExp(`fitting-${fitting}\\.html`));
  const wrong = cases.filter((one) => one.fitting === fitting && one.danger).map((one) => one.part);
  const row = page.locator("#wrong ~ * tbody tr, section[aria-labelledby=wrong] tbody tr").first();
  const box = await row.boundingBox();
  holds(box.y < PHONE.viewport.height, `the first wrong part is at ${box.y} px`);
  const shown = await page.locator("section[aria-labelledby=wrong]").textContent();
  for (const part of wrong) {
    holds(shown.includes(part), `${part} is not among: ${shown}`);
  }
}

/** From what is in the hand to its fitting. */
async function conductor(page, doing, ask) {
  const { candidates } = ask("identify", "--diameter", "14.0", "--wires", "19", "--scratch", "copper");
  await doing.find("14.0 mm 19 wires copper");
  await page.waitForURL(/hand\.html/);
  const found = await page.locator(".answer > ol > li > a").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
  equal(found.join(" "), candidates.map((one) => `conductor-${one.conductor}.html`).join(" "), "candidates");
  const [fitting] = candidates[0].fittings;
  await doing.follow(page.locator(`.answer a[href="fitting-${fitting}.html"]`).first());
  await page.waitForURL(new RegExp(`fitting-${fitting}\\.html`));
}

/** From the number and the check code on a card to whether it is good. */
async function card(page, doing) {
  const newest = readdirSync(join(CONTENT, "register")).sort().at(-1);
  const line = readFileSync(join(CONTENT, "register", newest), "utf8").split("\n").find((text) => text.includes("\"ST-4080\""));
  const { check_code: code, status } = JSON.parse(line.slice(2));
  equal(status, "superseded", "what the register says of it");
  await doing.find(`ST-4080 ${code}`);
  await page.waitForURL(/current\.html/);
  const answer = await page.locator("[data-tool=current] .answer").textContent();
  holds(answer.includes("superseded by ST-4100"), answer);
}

/** From the width of a worn wire's flat to how much of it is gone. */
async function flat(page, doing, ask) {
  await doing.find("flat 6.0");
  await page.waitForURL(/wear\.html/);
  const { worn_percent: percent } = ask("section", "--conductor", "contact-120", "--flat-width", "6.0").worn;
  const answer = await page.locator("[id='wearing-answer-contact-120']").textContent();
  const shown = Number(/worn ([0-9.]+)/.exec(answer)[1]);
  holds(shown >= percent - 0.001 && shown <= percent + 0.11, `${shown} %, the program says ${percent}`);
}

/** From a stand-out to what may be inside, and what to do. */
async function closed(page, doing, ask) {
  const answer = ask("identify", "--body", "ST-4101", "--conductor", "messenger-120", "--stand-out", "2.5", "--state", "tensioned");
  await doing.find("ST-4101 2.5 tensioned");
  await page.waitForURL(/closed\.html/);
  equal(await page.locator("[data-tool=closed] .answer").textContent(), "Choose the conductor.", "before a conductor is chosen");
  const list = page.locator("[data-tool=closed] [name=case]");
  const labels = await list.locator("option").allTextContents();
  const name = yaml("conductors").find((record) => /^id: messenger-120$/m.test(record)).match(/^name: (.+)$/m)[1];
  const label = labels.find((text) => text.startsWith("ST-4101 ") && text.endsWith(` on ${name}`));
  await doing.choose(list, label);
  const told = page.locator("[data-tool=closed] [data-says]");
  equal(await told.getAttribute("data-says"), answer.remarks[0], "what to do");
  const shown = await page.locator(".verdicts").textContent();
  for (const one of answer.inside.filter(({ fits_reading: fits }) => fits)) {
    holds(shown.includes(one.kit ?? one.part), `${one.part} is not among: ${shown}`);
  }
}

/** The records of a folder of the demo, as text. */
function yaml(folder) {
  const files = readdirSync(join(CONTENT, folder)).filter((name) => name.endsWith(".yaml"));
  return files.flatMap((name) => readFileSync(join(CONTENT, folder, name), "utf8").split(/^---$/m));
}
