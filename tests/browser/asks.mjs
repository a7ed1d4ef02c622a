// Look-ups that Find offers for typed readings: what each of them asks, and that it asks nothing else. Where a word
// leaves a reading in doubt there is none.

import { check, equal, holds, open } from "./kit.mjs";

const PHONE = { viewport: { width: 390, height: 844 } };

export async function asks(browser, site) {
  await offered(browser, site);
  await belowTheFace(browser, site);
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
      const told = await page.locator("[data-tool=closed] .told").getAttribute("data-says");
      holds(told.startsWith(says), told);
    });
    await done();
  }
}
