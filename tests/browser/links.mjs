// Every link of every page leads to a file that is there and to a place in it; Find leads nowhere else.

import { existsSync, readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { check, equal } from "./kit.mjs";

/** Gathers from each open page what can be led to on it, and where it leads. */
export function links(site) {
  const places = new Map();
  return {
    async look(page, name) {
      places.set(name, await page.evaluate(() => ({
        ids: [...document.querySelectorAll("[id]")].map((element) => element.id),
        leads: [...document.querySelectorAll("a[href], img[src], link[href], script[src]")].map((element) => element.getAttribute("href") ?? element.getAttribute("src")),
      })));
    },
    async close() {
      const index = site.text("index.js");
      const found = JSON.parse(index.slice(index.indexOf("["), index.lastIndexOf("]") + 1)).map((row) => row[3]);
      places.set("index.js", { ids: [], leads: found });
      for (const [name, { leads }] of places) {
        await check(`${name}: every link leads somewhere`, () => equal(leads.filter((lead) => lost(site, places, name, lead)).join(" "), "", "links that do not"));
      }
    },
  };
}

function lost(site, places, name, lead) {
  const [file, place] = lead.split("#").map(decodeURIComponent);
  const path = resolve(dirname(fileURLToPath(site.address(name))), file || name);
  if (!existsSync(path) || readFileSync(path).length === 0) {
    return true;
  }
  return place !== undefined && !places.get(file || name)?.ids.includes(place);
}
