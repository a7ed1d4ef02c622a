// Look-ups that Find offers for typed readings: what each of them asks, and that it asks nothing else. Where a word
// leaves a reading in doubt there is none.

import { check, equal, holds, open } from "./kit.mjs";

const PHONE = { viewport: { width: 390, height: 844 } };

export async function asks(browser, site, singleFile) {
  await offered(browser, site);
  await belowTheFace(browser, site);
  await odd(browser, site);
  await onlyWhatIsTyped(browser, "", site.address("index.html"));
  if (singleFile) {
    await onlyWhatIsTyped(browser, "one file: ", `file://${singleFile}`);
  }
}

/** What look-ups ask for, as addresses, by what is typed: none where it is in doubt. */
const OFFERED = {
  // Below the face.
  "ST-4101 -3": "body=ST-4101&reading=-3",
  "ST-4101 \u22123": "body=ST-4101&reading=-3",
  "ST-4101 \u20133": "body=ST-4101&reading=-3",
  "ST-4101 - 3": "body=ST-4101&reading=-3",
  "ST-4101 \u2013 3": "body=ST-4101&reading=-3",
  "st 4101 \u2212 3,5 mm": "body=ST-4101&reading=-3.5",
  "ST - 4101 - 3mm": "body=ST-4101&reading=-3",
  "ST-4101- 3": "body=ST-4101&reading=-3",
  "ST-4101 minus 3": "body=ST-4101&reading=-3",
  "ST-4101 Minus 3 mm, tensioned": "body=ST-4101&reading=-3&state=tensioned",
  "ST-4101 3 below": "body=ST-4101&reading=-3",
  "ST-4101 3 mm below the face": "body=ST-4101&reading=-3",
  "ST-4101 -3 mm below the face": "body=ST-4101&reading=-3",
  "ST-4101 3 mm, below the face.": "body=ST-4101&reading=-3",
  "ST-4101 sunk 3": "body=ST-4101&reading=-3",
  "ST-4101 seated, sunk by 3": "body=ST-4101&reading=-3&state=seated",
  // Above it.
  "ST-4101 2.5 tensioned": "body=ST-4101&reading=2.5&state=tensioned",
  "ST-4101: 2,5 mm": "body=ST-4101&reading=2.5",
  "ST-4101 + 3": "body=ST-4101&reading=3",
  "ST-4101 stand-out 3": "body=ST-4101&reading=3",
  "ST-4101 stands out 3": "body=ST-4101&reading=3",
  "ST-4101 tensioned": "body=ST-4101&state=tensioned",
  // In doubt.
  "ST-4101 . 3": "",
  "ST-4101 3 -": "",
  "ST-4101 2 - 3": "",
  "ST-4101 - - 3": "",
  "ST-4101 minus -3": "",
  "ST-4101 sunk +3": "",
  "ST-4101 3 inside": "",
  "ST-4101 3 under tension": "",
  "ST-4101 3 not tensioned": "",
  "ST-4101 3 seated tensioned": "",
  "ST-4101 minus": "",
  // A check code.
  "ST-4101 5n0-rh9": "number=ST-4101&code=5N0RH9",
  "ST-4100 971 994": "number=ST-4100&code=971994",
  // Of two sizes, which is a second reading across.
  "14.0 mm 19 wires copper": "one=14.0&wires=19&scratch=copper",
  "14.0 mm not copper": "one=14.0",
  "14.0 mm copper or grey": "one=14.0",
  "14.0 mm copper bronze": "one=14.0&scratch=copper",
  "50 mm tube": "one=50&shape=tube",
  "40 mm bar": "one=40&shape=bar",
  "14.0 14.1 mm 19 wires": "one=14.0&two=14.1&wires=19",
  "14.0 - 14.1 mm": "one=14.0&two=14.1",
  "14.0 19 wires 14.1": "one=14.0&two=14.1&wires=19",
  "12.0 8.0": "one=12.0&two=8.0",
  "9.0 7 wires 3.0": "one=9.0&wires=7",
  "9,0 mm 7 wires 3,0 mm": "one=9.0&wires=7",
  "9.0 3.0 7 wires": "one=9.0&wires=7",
  "9.0 7 wires 5.5": "one=9.0&wires=7",
  "3.0 7 wires 9.0": "",
  "9.0 19.5 wires": "one=9.0&wires=19.5",
  // Worn wire.
  "flat 6.0": "flat=6.0",
  "height 9.3 mm": "height=9.3",
  "height 9.3 flat 6.0": "",
  "flat 6.0 5.8": "",
};

async function offered(browser, site) {
  const { page, faults, done } = await open(browser, PHONE);
  await page.goto(site.address("index.html"));
  for (const [query, asked] of Object.entries(OFFERED)) {
    await check(`Find offers for "${query}" ${asked || "no look-up"}`, async () => {
      const found = await lookUps(page, query);
      equal(found.map((href) => decodeURIComponent(href.split("?")[1])).join(" "), asked, "look-ups");
    });
  }
  await check("to offer look-ups asks for nothing but files", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}

/** Addresses of the look-ups that Find offers. */
async function lookUps(page, query) {
  await page.locator("#find").fill(query);
  await page.waitForFunction(() => document.querySelector(".find-count").textContent !== "");
  return page.locator(".find-list a", { has: page.locator(".found-kind", { hasText: /^Look-up$/ }) }).evaluateAll((all) => all.map((link) => link.getAttribute("href")));
}

/** Types into Find and opens the first that is found. */
async function look(page, query) {
  const [first] = await lookUps(page, query);
  holds(first, `nothing is looked up for ${query}`);
  await page.locator(".find-list a").first().click();
}

/** What is below the face on the narrowest wire: no part that goes in, and above it the right one alone. */
async function belowTheFace(browser, site) {
  for (const [query, says] of [["ST-4101 3", "only the right part"], ["ST-4101 - 3", "nothing that goes in agrees"], ["ST-4101 3 mm below the face", "nothing that goes in agrees"]]) {
    const { page, done } = await open(browser, PHONE);
    await check(`"${query}" on Messenger wire 95: ${says}`, async () => {
      await page.goto(site.address("index.html"));
      await look(page, query);
      await page.locator("[data-tool=closed] [name=case]").selectOption({ label: "ST-4101 Collet body on Messenger wire 95" });
      const told = await page.locator("[data-tool=closed] [data-says]").getAttribute("data-says");
      holds(told.startsWith(says), told);
    });
    await done();
  }
}

/** Fields that hold no number, or no whole one, and what they may hold. */
async function odd(browser, site) {
  const { page, done } = await open(browser, PHONE);
  const said = async (fields, answer) => {
    for (const [name, value] of Object.entries(fields)) {
      await page.locator(`[data-tool] [name=${name}]`).fill(value);
    }
    return page.locator(answer).textContent();
  };
  await page.goto(site.address("closed.html"));
  await page.locator("[data-tool=closed] [name=case]").selectOption("0");
  const closed = (tolerance) => said({ reading: "3", tolerance }, "[data-tool=closed] .answer");
  for (const [typed, plain] of [["\u00b12", "2"], ["1 mm", "1"], ["\u00b1 0,2 mm", "0.2"], ["", "0.5"]]) {
    await check(`a tolerance of "${typed}" is ${plain}`, async () => equal(await closed(typed), await closed(plain), "answer"));
  }
  for (const typed of ["abc", "mm", "\u00b1", "1 m", "0.5 or so"]) {
    await check(`a tolerance of "${typed}" gets no answer`, async () => equal(await closed(typed), `\u201c${typed}\u201d is not a number.`, "answer"));
  }
  await check("a negative tolerance is refused", async () => equal(await closed("-1"), "A tolerance is from 0 to 50 mm.", "answer"));
  await check("a stand-out that is no number gets no answer", async () => {
    equal(await said({ reading: "three", tolerance: "0.5" }, "[data-tool=closed] .answer"), "\u201cthree\u201d is not a number.", "answer");
  });
  await page.goto(site.address("hand.html"));
  for (const name of ["wires", "outer"]) {
    await check(`a conductor has no half of a wire: ${name}`, async () => {
      const answer = await said({ one: "14.0", wires: "", outer: "", [name]: "19.5" }, "[data-tool=hand] .answer");
      equal(answer, "\u201c19.5\u201d is not a whole number: wires are counted.", "answer");
    });
  }
  await check("a whole count may have a decimal mark, a diameter a fraction, a tolerance its sign", async () => {
    const answer = await said({ one: "14.0", wires: "19.0", outer: "", wire: "2.8", tolerance: "\u00b10.2 mm" }, "[data-tool=hand] .answer");
    equal(answer, await said({ wires: "19", tolerance: "0.2" }, "[data-tool=hand] .answer"), "answer");
    equal(answer.includes("not a"), false, "refused");
  });
  await done();
}

/** A look-up leaves nothing in the fields that it does not name. */
async function onlyWhatIsTyped(browser, where, address) {
  const { page, faults, done } = await open(browser, PHONE);
  await page.goto(address);
  const filled = (tool, all) => page.waitForFunction(([tool, all]) => {
    const fields = [...document.querySelector(`[data-tool=${tool}]`).elements].filter((field) => field.type !== "button" && field.name !== "case");
    return fields.map((field) => field.value).join("|") === all;
  }, [tool, all], { timeout: 5000 });
  const field = (tool, name) => page.locator(`[data-tool=${tool}] [name=${name}]`);
  await check(`${where}a conductor looked up after another is looked up alone`, async () => {
    await look(page, "14.0 14.1 mm 19 wires copper");
    await filled("hand", "14.0|14.1|0.1|19|||||copper");
    await field("hand", "tolerance").fill("3");
    await field("hand", "magnet").selectOption("slight");
    await look(page, "9.0 mm");
    await filled("hand", "9.0||0.1||||||");
    const answer = await page.locator("[data-tool=hand] .answer").textContent();
    await page.locator("[data-tool=hand] [name=clear]").click();
    await field("hand", "one").fill("9.0");
    equal(await page.locator("[data-tool=hand] .answer").textContent(), answer, "the answer to 9.0 mm alone");
  });
  await check(`${where}the same again sets again what was changed by hand`, async () => {
    await look(page, "9.0 mm");
    await field("hand", "one").fill("12");
    await field("hand", "wires").fill("37");
    await look(page, "9.0 mm");
    await filled("hand", "9.0||0.1||||||");
  });
  await check(`${where}a closed fitting looked up after another has neither its conductor nor its tension`, async () => {
    await look(page, "ST-4101 2.5 tensioned");
    await filled("closed", "ST-4101|2.5|tensioned|0.5");
    await field("closed", "case").selectOption({ index: 2 });
    await field("closed", "tolerance").fill("4");
    await look(page, "ST-4101 sunk 1");
    await filled("closed", "ST-4101|-1|unknown|0.5");
    equal(await page.locator("[data-tool=closed] .answer").textContent(), "Choose the conductor.", "answer");
    await look(page, "ST-4141 tensioned");
    await filled("closed", "ST-4141||tensioned|0.5");
    equal(await page.locator("[data-tool=closed] .answer").textContent(), "", "answer without a reading");
  });
  await check(`${where}a worn wire is looked up by its height or by its flat`, async () => {
    await look(page, "flat 6.0");
    await filled("wear", "|6.0");
    await look(page, "height 9.3");
    await filled("wear", "9.3|");
  });
  await check(`${where}look-ups one after the other complain of nothing`, async () => equal(faults.join("\n"), "", "faults"));
  await done();
}
