// What pages do for people: finding things by keyboard, looking up wear and closed fittings, and all that
// matters with scripts off.

import { check, equal, holds, open } from "./kit.mjs";

export async function use(browser, site) {
  await find(browser, site);
  await wear(browser, site);
  await closed(browser, site);
  await hand(browser, site);
  await withoutScripts(browser, site);
}

/** A row of the index: kind, number, name, address, stamp. */
function rows(site) {
  const text = readIndex(site);
  return JSON.parse(text.slice(text.indexOf("["), text.lastIndexOf("]") + 1));
}

function readIndex(site) {
  return site.text("index.js");
}

async function find(browser, site) {
  const { page, faults, done } = await open(browser, { viewport: { width: 390, height: 800 } });
  const [, number, , address] = rows(site).find(([kind]) => kind === "Fitting");
  const stamped = rows(site).find(([kind, , , , stamp]) => kind !== "Fitting" && stamp);
  const type = async (text) => {
    await page.goto(site.address("index.html"));
    await page.locator("#find").focus();
    await page.keyboard.type(text);
    await page.waitForFunction(() => document.querySelector(".find-count").textContent !== "");
  };
  await check("the skip link comes first and leads to the page", async () => {
    await page.goto(site.address("index.html"));
    await page.keyboard.press("Tab");
    equal(await page.evaluate(() => document.activeElement.className), "skip", "first stop");
    await page.keyboard.press("Enter");
    equal(await page.evaluate(() => document.activeElement.id), "main", "where it leads");
  });
  await check("a number leads to its page by keyboard alone", async () => {
    await type(number.toLowerCase().replace("-", ""));
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await page.waitForURL(site.address(address));
  });
  await check("Enter in the box opens the first that was found", async () => {
    await type(number);
    await page.keyboard.press("Enter");
    await page.waitForURL(site.address(address));
  });
  await check("a stamp is found", async () => {
    await type(stamped[4]);
    const links = await page.locator(".find-list a").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
    holds(links.includes(stamped[3]), `${stamped[4]} finds ${links.join(", ")}`);
  });
  await check("letters taken for digits, no spaces, other hyphens: the same is found", async () => {
    // From memory: O is taken for 0, and I and l for 1, wherever stamps are read off metal.
    const swapped = (text) => text.replaceAll("0", "O").replaceAll("1", "I").replaceAll("-", "\u2010");
    for (const typed of [swapped(stamped[4]), stamped[4].toLowerCase().replaceAll(" ", ""), swapped(stamped[1]).toLowerCase()]) {
      await type(typed);
      const links = await page.locator(".find-list a").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
      holds(links.includes(stamped[3]), `${typed} finds ${links.join(", ")}`);
    }
  });
  await check("accents count for nothing", async () => {
    await type("lo\u0301ok-\u00e0like");
    holds((await page.locator(".find-list a").count()) > 0, "nothing found");
  });
  await check("what is found shows its mark", async () => {
    const marked = rows(site).find((row) => row[8] && row[4]);
    await type(marked[4]);
    const shown = await page.locator(`.find-list a[href="${marked[3]}"] .mark`).textContent();
    holds(shown.includes(marked[8].words), shown);
  });
  await check("what is replaced or withdrawn comes last, and says so", async () => {
    await type("cone");
    const lines = await page.locator(".find-list li").evaluateAll((all) => all.map((line) => line.querySelector(".standing-superseded, .standing-withdrawn") !== null));
    holds(lines.includes(true) && lines.includes(false), "the demo has none of one kind");
    equal(lines.lastIndexOf(false) < lines.indexOf(true), true, "all others stand before them");
  });
  await check("a word of the glossary is found", async () => {
    await type("look-alike");
    holds((await page.locator(".find-list a").count()) > 0, "nothing found");
  });
  await check("what isn't there is said not to be", async () => {
    await type("qqqqxx");
    equal(await page.locator(".find-count").textContent(), "Nothing found", "message");
    await page.keyboard.press("Escape");
    equal(await page.locator("#find").inputValue(), "", "box after Escape");
  });
  await check("finding asks for nothing but files", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}

/** The calculator gives the figures of the table beside it, whichever of height and flat is typed. */
async function wear(browser, site) {
  const { page, faults, done } = await open(browser);
  await page.goto(site.address("wear.html"));
  const tools = await page.locator("[data-tool=wear]").count();
  for (let index = 0; index < tools; index += 1) {
    const section = page.locator("main > section").nth(index);
    const row = await section.locator("table.wear tbody tr").nth(9).locator("th, td").allTextContents();
    const [height, flat, left, worn] = row.map((text) => text.split("\u00a0")[0]);
    const answer = section.locator(".answer");
    await check(`wear by height, wire ${index + 1}`, async () => {
      await section.locator("[name=height]").fill(height.replace(".", ","));
      const text = await answer.textContent();
      for (const figure of [left, worn, height]) {
        holds(text.includes(figure), `${figure} in ${text}`);
      }
    });
    await check(`wear by flat, wire ${index + 1}`, async () => {
      await section.locator("[name=flat]").fill(flat);
      const text = await answer.textContent();
      const found = Number(/height ([0-9.]+)/.exec(text)?.[1]);
      holds(Math.abs(found - Number(height)) < 0.06, `height ${height} from flat ${flat}: ${text}`);
      equal(await section.locator("[name=height]").inputValue(), "", "the other box");
    });
    await check(`the drawn flat is as wide and as high as the table says, wire ${index + 1}`, async () => {
      const [whole] = (await section.locator("table.wear tbody tr").first().locator("th, td").allTextContents()).map(Number.parseFloat);
      await section.locator("[name=height]").fill(height);
      const drawn = await section.locator("svg.wearing").evaluate((picture) => {
        const all = picture.querySelector(":scope > path").getBBox(), line = picture.querySelector(".flat").getBBox();
        return { height: (line.y - all.y) / all.height, flat: line.width / all.height, cut: Number(picture.querySelector(".left").getAttribute("height")) - line.y };
      });
      // The table says the flat to a tenth and never more than it is: half a tenth above lies the middle of what it can be.
      for (const [name, found, said] of [["height", drawn.height, height / whole], ["flat", drawn.flat, (Number(flat) + 0.05) / whole], ["cut", drawn.cut, 0]]) {
        holds(Math.abs(found - said) < 0.06 / whole, `${name}: drawn ${found}, expected ${said}`);
      }
    });
    await check(`wear beyond the wire, wire ${index + 1}`, async () => {
      await section.locator("[name=height]").fill("99");
      holds((await answer.textContent()).includes("measure again"), await answer.textContent());
    });
  }
  await check("wear complains of nothing", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}

async function closed(browser, site) {
  const { page, faults, done } = await open(browser);
  await page.goto(site.address("closed.html"));
  const answer = page.locator("[data-tool=closed] .answer");
  if ((await answer.count()) === 0) {
    await done();
    return;
  }
  const data = JSON.parse(await page.locator("#closed-data").textContent());
  /* The first part of a kind whose window is known, with a reading in the middle of it. */
  const known = (kind) => {
    const part = data.cases[0].inside.find(({ ways }) => ways[0].class === kind && ways[0].seated !== null);
    return { text: part.text, reading: String((part.ways[0].seated[0] + part.ways[0].seated[1]) / 2) };
  };
  await check("a reading alone gets no answer", async () => {
    await page.locator("[name=reading]").fill("3");
    equal(await answer.textContent(), data.cases.length > 1 ? "Choose body and conductor." : await answer.textContent(), "answer");
    await page.locator("[name=case]").selectOption("0");
    holds(!(await answer.textContent()).includes("Choose"), await answer.textContent());
  });
  await check("a closed fitting with the right stand-out names the right part", async () => {
    const own = known("right-part");
    await page.locator("[name=reading]").fill(own.reading);
    holds((await answer.textContent()).includes(own.text), await answer.textContent());
  });
  await check("dangers are drawn as dangers, and what to do stands before them", async () => {
    await page.locator("[name=reading]").fill(known("hidden-danger").reading);
    holds((await answer.locator(":scope > :first-child").textContent()).startsWith("Stop"), "what to do is not first");
    holds((await answer.locator(".hidden-danger").first().textContent()).startsWith("Danger"), "no danger");
    equal((await answer.textContent()).includes("undefined"), false, "a gap in the words");
    equal(await answer.locator("svg.ruler line.reading").count(), 1, "readings on the ruler");
  });
  await check("the ruler says sunk for what lies below the face, and has no minus", async () => {
    await page.locator("[name=reading]").fill("-2");
    const texts = (await answer.locator("svg.ruler text").allTextContents()).join(" ");
    holds(texts.includes("sunk"), texts);
    equal(/[-\u2212]\d+(?!\d)(?=\s|$)/.test(texts.replace(/\S*[A-Z]\S*/g, "")), false, "a minus on the ruler");
    await page.locator("[name=reading]").fill("");
  });
  await check("a line of what can be inside stands there once", async () => {
    const tables = await page.locator("table.windows tbody").evaluateAll((all) => all.map((table) => [...table.rows].map((row) => row.textContent)));
    const twice = tables.flatMap((rows) => rows.filter((row, index) => rows.indexOf(row) !== index));
    equal(twice.join("; "), "", "lines that are there twice");
  });
  await check("a stand-out that no part gives means stop", async () => {
    await page.locator("[name=reading]").fill("400");
    const all = data.cases[0].inside.every(({ ways }) => ways.every((way) => way.seated !== null));
    holds(!all || (await answer.textContent()).includes("Stop"), await answer.textContent());
  });
  await check("closed fittings complain of nothing", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}

async function hand(browser, site) {
  const { page, faults, done } = await open(browser, { viewport: { width: 390, height: 844 } });
  await page.goto(site.address("hand.html"));
  const data = JSON.parse(await page.locator("#hand-data").textContent());
  const answer = page.locator("[data-tool=hand] .answer");
  const [first] = data.conductors;
  await check("a measured conductor is among the candidates", async () => {
    await page.locator("[name=one]").fill(String(first.at.mm));
    holds((await answer.textContent()).includes(first.text), await answer.textContent());
  });
  await check("the answer stays in sight while the last field is filled", async () => {
    await page.locator("[name=scratch]").scrollIntoViewIfNeeded();
    await page.evaluate(() => document.querySelector("[name=scratch]").scrollIntoView({ block: "center" }));
    const box = await page.locator(".tally").boundingBox();
    holds(box.y >= 0 && box.y + box.height <= 844, `the answer is at ${box.y} px`);
  });
  await check("what is ruled out stands there with the reason", async () => {
    const other = data.conductors.find((conductor) => Math.abs(conductor.at.mm - first.at.mm) > 2);
    const line = await page.locator(".ruled-out li", { hasText: other.text }).first().textContent();
    holds(line.includes(`it measures ${other.at.mm}`), line);
  });
  await check("a diameter that nothing has means stop", async () => {
    await page.locator("[name=one]").fill("150");
    holds((await answer.textContent()).includes("stop"), await answer.textContent());
  });
  /* The demo has a bronze and a copper messenger of 19 wires and 14.0 mm: with a caliper, magnet and file they are the same. */
  await check("conductors that nobody can tell apart by hand mean stop", async () => {
    await page.locator("[name=one]").fill("14");
    await page.locator("[name=wires]").fill("19");
    const said = await answer.textContent();
    holds(said.startsWith("Stop: 2 conductors fit") && said.includes("Read the drum tag or the line record."), said);
  });
  await check("clearing clears", async () => {
    await page.locator("[data-tool=hand] [name=clear]").click();
    await page.waitForFunction(() => document.querySelector("[data-tool=hand] .answer").textContent === "");
  });
  await check("measured conductors complain of nothing", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}

async function withoutScripts(browser, site) {
  const { page, done } = await open(browser, { javaScriptEnabled: false, viewport: { width: 390, height: 800 } });
  await check("with scripts off, no box is shown that would do nothing", async () => {
    for (const name of ["index.html", "wear.html", "closed.html", "hand.html"]) {
      await page.goto(site.address(name));
      equal(await page.locator("input:visible, select:visible, button:visible").count(), 0, name);
    }
  });
  await check("with scripts off, every fitting can be reached from the first page", async () => {
    await page.goto(site.address("index.html"));
    const links = await page.locator("main a").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
    const missing = site.pages.filter((name) => name.startsWith("fitting-") && !links.includes(name));
    equal(missing.join(", "), "", "fittings without a link");
  });
  await done();
}
