// How a fitting goes together: step by step with a picture each, by keys alone, still where no motion is wanted; side by
// side on paper and with scripts off.

import { check, equal, holds, open } from "./kit.mjs";

export async function stages(browser, site) {
  await withScripts(browser, site);
  await withoutScripts(browser, site);
}

/** The first page whose steps have pictures. */
function staged(site) {
  return site.pages.find((page) => site.text(page).includes("data-stages") && site.text(page).includes("<li value="));
}

async function withScripts(browser, site) {
  const name = staged(site);
  if (!name) {
    return;
  }
  for (const reducedMotion of ["no-preference", "reduce"]) {
    const { page, done } = await open(browser, { reducedMotion });
    await page.goto(site.address(name));
    const shown = () => page.locator("[data-stages] > .stage:visible").count();
    const words = () => page.locator("[data-stages] li:visible").allTextContents();
    const steps = await page.locator("#steps + ol > li").allTextContents();
    const button = (text) => page.locator("[data-stages] button", { hasText: text });
    const says = () => page.locator(".stage-controls [role=status]").textContent();
    await check(`steps are shown one by one, each with one picture, by keys alone, ${reducedMotion}`, async () => {
      await button("Next").focus();
      for (const [index, step] of steps.entries()) {
        equal(await says(), `Step ${index + 1} of ${steps.length}`, "the step's number");
        equal((await words()).join(" / "), step, "the words under the picture");
        equal(await shown(), 1, "pictures shown");
        if (index < steps.length - 1) {
          await page.keyboard.press(index % 2 === 0 ? "Enter" : "ArrowRight");
        }
      }
      equal(await button("Next").isDisabled(), true, "Next after the last step is off");
      await page.keyboard.press("Enter");
      equal(await says(), `Step ${steps.length - 1} of ${steps.length}`, "Back has the keys when Next is off");
    });
    await check(`pictures of steps are as wide as the page, and stand in one place, ${reducedMotion}`, async () => {
      const boxes = [];
      while (await button("Back").isEnabled()) {
        await button("Back").click();
        boxes.push(await page.locator(".stage:visible svg").boundingBox());
      }
      const [first] = boxes;
      const room = await page.locator("[data-stages]").boundingBox();
      holds(first.width >= Math.min(room.width, 960) - 1 || first.height >= 0.65 * page.viewportSize().height, `the picture is ${first.width} px wide`);
      holds(boxes.every((box) => box.width === first.width && box.height === first.height && box.x === first.x), "pictures jump");
    });
    await check(`balloons stand still from step to step, ${reducedMotion}`, async () => {
      const places = await page.locator("[data-stages] svg").evaluateAll((all) => all.map((svg) => {
        const radius = Math.max(...[...svg.querySelectorAll("circle.sk-ink, circle.sk-paper, g.sk-paper circle")].map((ring) => Number(ring.getAttribute("r"))));
        const rings = [...svg.querySelectorAll("circle")].filter((ring) => Number(ring.getAttribute("r")) === radius);
        return rings.map((ring) => `${ring.getAttribute("cx")},${ring.getAttribute("cy")}`).sort().join(" ");
      }));
      holds(places[0].length > 0 && places.every((place) => place === places[0]), places.join("\n"));
    });
    await check(`steps play only where motion is wanted, ${reducedMotion}`, async () => {
      equal(await button("Play").count(), reducedMotion === "reduce" ? 0 : 1, "play buttons");
    });
    await check(`stages print side by side with their steps, ${reducedMotion}`, async () => {
      await page.emulateMedia({ media: "print" });
      await besideEachOther(page, steps);
    });
    await done();
  }
}

/** All stages in one row, each above the steps that belong to it; all steps, with their numbers. */
async function besideEachOther(page, steps) {
  const stages = page.locator("[data-stages] > .stage");
  const boxes = await stages.evaluateAll((all) => all.map((stage) => stage.getBoundingClientRect()).map(({ x, y }) => ({ x, y })));
  equal(boxes.length, 3, "stages");
  holds(boxes.every((box) => box.y === boxes[0].y), "stages do not stand in one row");
  const lines = page.locator("[data-stages] li:visible");
  equal((await lines.allTextContents()).join(" / "), steps.join(" / "), "steps under the pictures");
  const numbers = await lines.evaluateAll((all) => all.map((line) => line.value));
  equal(numbers.join(" "), steps.map((_, index) => index + 1).join(" "), "numbers of steps");
}

async function withoutScripts(browser, site) {
  const { page, done } = await open(browser, { javaScriptEnabled: false });
  await check("with scripts off, all stages stand side by side with their steps", async () => {
    const name = staged(site);
    if (name) {
      await page.goto(site.address(name));
      await besideEachOther(page, await page.locator("#steps + ol > li").allTextContents());
    }
  });
  await done();
}
