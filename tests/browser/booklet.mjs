// The booklet and the register's pages as people open them: from disk, by double click, in a small window and a large one.

import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { agrees } from "./agrees.mjs";
import { asks } from "./asks.mjs";
import { current } from "./current.mjs";
import { close, launch } from "./kit.mjs";
import { links } from "./links.mjs";
import { looks } from "./looks.mjs";
import { network } from "./network.mjs";
import { paper } from "./paper.mjs";
import { register } from "./register.mjs";
import { single } from "./single.mjs";
import { firstScreen, small } from "./small.mjs";
import { stages } from "./stages.mjs";
import { tasks } from "./tasks.mjs";
import { training } from "./training.mjs";
import { use } from "./use.mjs";
import { valid } from "./valid.mjs";

const [folder, singleFile, program] = process.argv.slice(2);
if (!folder) {
  console.error("usage: tests/browser/run PROGRAM OUTPUT_FOLDER");
  process.exit(2);
}

/** The pages of a folder of the output. */
function pagesOf(name) {
  const place = resolve(folder, name);
  return {
    pages: readdirSync(place).filter((name) => name.endsWith(".html")).sort(),
    address: (name) => `file://${join(place, name)}`,
    text: (name) => readFileSync(join(place, name), "utf8"),
  };
}

const site = pagesOf("booklet");

const browser = await launch();
try {
  await valid(site);
  await looks(browser, site, [links(site), firstScreen, paper(site)]);
  await small(site);
  await use(browser, site);
  await stages(browser, site);
  await tasks(browser, site, resolve(program));
  await asks(browser, site, singleFile && resolve(singleFile));
  await agrees(browser, site, program);
  await current(browser, site, resolve(program));
  await register(browser, pagesOf("register"), resolve(program));
  await training(browser, pagesOf("training"));
  await network(browser, site);
  if (singleFile) {
    await single(browser, resolve(singleFile));
  }
} finally {
  await browser.close();
}
close();
