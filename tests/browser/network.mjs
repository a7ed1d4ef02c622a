// Each page's own policy forbids any network: a server that listens hears nothing.

import { createServer } from "node:http";
import { check, equal, holds, open } from "./kit.mjs";

export async function network(browser, site) {
  let heard = 0;
  const server = createServer((_, answer) => {
    heard += 1;
    answer.end();
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  const address = `http://127.0.0.1:${server.address().port}/`;
  const { page, done } = await open(browser);
  await check("a page can't reach a server even where a script tries", async () => {
    await page.goto(site.address("index.html"));
    await page.evaluate(reach, address);
    await page.waitForTimeout(300);
    equal(heard, 0, "requests that arrived");
  });
  await check("the server would have heard a page without the policy", async () => {
    await page.goto(`file://${import.meta.filename}`);
    await page.evaluate(reach, address);
    await page.waitForTimeout(300);
    holds(heard > 0, "it heard nothing either");
  });
  await done();
  server.close();
}

/** Runs in the page: every way to ask for something. */
async function reach(address) {
  for (const [name, attribute] of [["img", "src"], ["script", "src"], ["link", "href"], ["iframe", "src"], ["video", "src"], ["object", "data"]]) {
    const element = document.createElement(name);
    element.rel = "stylesheet";
    element[attribute] = address + name;
    document.body.append(element);
  }
  try {
    new WebSocket(address.replace("http", "ws"));
  } catch {
    // Refused at once: as it should be.
  }
  navigator.sendBeacon?.(`${address}beacon`);
  await fetch(`${address}fetch`).catch(() => undefined);
}
