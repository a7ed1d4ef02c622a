// The booklet as people open it: from disk, by double click, in a small window and a large one.

import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { agrees } from "./agrees.mjs";
import { close, launch } from "./kit.mjs";
import { looks } from "./looks.mjs";
import { network } from "./network.mjs";
import { paper } from "./paper.mjs";
import { single } from "./single.mjs";
import { use } from "./use.mjs";
import { valid } from "./valid.mjs";

const [folder, singleFile, program] = process.argv.slice(2);
if (!folder) {
  console.error("usage: tests/browser/run PROGRAM OUTPUT_FOLDER");
  process.exit(2);
}

const booklet = resolve(folder, "booklet");
const pages = readdirSync(booklet).filter((name) => name.endsWith(".html")).sort();
const site = {
  pages,
  address: (name) => `file://${join(booklet, name)}`,
  text: (name) => readFileSync(join(booklet, name), "utf8"),
};

const browser = await launch();
try {
  await valid(site);
  await looks(browser, site);
  await use(browser, site);
  await agrees(browser, site, program);
  await network(browser, site);
  await paper(browser, site);
  if (singleFile) {
    await single(browser, resolve(singleFile));
  }
} finally {
  await browser.close();
}
close();
