// Small screens: what matters is on the first of them, and nothing has to be pushed sideways with type at 200 %
// (WCAG 2.2, success criterion 1.4.4); that nothing has in plain type is looked at where each page is open anyway (looks.mjs).

import { check, equal, holds, launch, open } from "./kit.mjs";

/** The screen of a common phone, in CSS pixels: common practice, no source. */
const PHONE = { width: 390, height: 844 };
/** What Chromium's own setting of 200 % comes to: twice its 16 px. */
const LARGE_TYPE = ["--blink-settings=defaultFontSize=32"];

export async function small(site) {
  const large = await launch(LARGE_TYPE);
  await inLargeType(large, { ...site, pages: samples(site) });
  await large.close();
}

/** Looks at the first screen of an open page of a fitting. */
export const firstScreen = {
  async look(page, name) {
    if (!name.startsWith("fitting-")) {
      return;
    }
    await page.setViewportSize(PHONE);
    const found = await page.evaluate(() => {
      const bottom = (element) => (element ? element.getBoundingClientRect().bottom : null);
      const top = (element) => (element ? element.getBoundingClientRect().top : null);
      const first = document.querySelector(".wrong tbody tr");
      const sections = ["which", "wrong", "steps", "checks", "drawings", "parts"].map((id) => top(document.getElementById(id)));
      return {
        header: bottom(document.querySelector("header")),
        which: bottom(document.querySelector(".hold")),
        wrong: [".first", "th", ".stamp"].map((part) => bottom(first?.querySelector(part) ?? null)),
        sections: sections.filter((place) => place !== null),
      };
    });
    await check(`${name}: stamp, mark and the first wrong part are on a phone's first screen`, () => {
      holds(found.header <= 150, `the header takes ${found.header} px`);
      for (const place of [found.which, ...found.wrong]) {
        holds(place === null || place <= PHONE.height, `one of them ends at ${place} px`);
      }
    });
    await check(`${name}: which, not these, steps, checks, drawings, parts, in this order`, () => {
      equal(found.sections.join(" "), [...found.sections].sort((a, b) => a - b).join(" "), "where they begin");
    });
  },
  async close() {},
};

async function inLargeType(browser, site) {
  const { page, done } = await open(browser, { viewport: PHONE });
  for (const name of site.pages) {
    await page.goto(site.address(name));
    for (const width of [320, 390]) {
      await page.setViewportSize({ width, height: PHONE.height });
      await noSideways(page, `${name} at ${width} px, type at 200 %`);
    }
  }
  await done();
}

/** Checks that nothing of a page has to be pushed sideways. */
export async function noSideways(page, name) {
  await check(`${name}: nothing is wider than the page`, async () => equal((await wide(page)).join("; "), "", "what is"));
}

/** What sticks out of the page, and the boxes whose content has to be pushed sideways. */
function wide(page) {
  return page.evaluate(() => {
    const named = (element) => `${element.tagName}.${element.className} ${element.textContent.trim().slice(0, 30)}`;
    const out = [...document.querySelectorAll("body *:not(svg *, .skip)")].filter((element) => element.getBoundingClientRect().right > window.innerWidth + 1);
    const pushed = [...document.querySelectorAll(".scroll")].filter((box) => box.scrollWidth > box.clientWidth + 1);
    return [...out, ...pushed].slice(0, 4).map(named);
  });
}

/** A page of each kind, and those of fittings in any state. */
function samples(site) {
  const kinds = new Map(site.pages.map((name) => [name.split("-")[0], name]));
  const stated = site.pages.filter((name) => name.startsWith("fitting-") && site.text(name).includes("standing-block"));
  return [...new Set([...kinds.values(), ...stated])];
}
