// Checks that count themselves, and pages that notice whatever goes wrong in them.

import { chromium } from "playwright-core";

const ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-features=LocalNetworkAccessChecks"];

const counts = { passed: 0, failed: 0 };

/** Runs one check and says whether it held. */
export async function check(name, body) {
  try {
    await body();
    counts.passed += 1;
  } catch (error) {
    counts.failed += 1;
    console.log(`FAILED ${name}\n    ${String(error.message ?? error).split("\n").join("\n    ")}`);
  }
}

/** Says how all checks went, and leaves with it. */
export function close() {
  console.log(`${counts.passed} passed, ${counts.failed} failed`);
  process.exitCode = counts.failed > 0 ? 1 : 0;
}

export function holds(condition, message) {
  if (!condition) {
    throw new Error(message);
  }
}

export function equal(found, expected, what) {
  holds(found === expected, `${what}: found ${JSON.stringify(found)}, expected ${JSON.stringify(expected)}`);
}

/** A browser; with settings of its own where some are given. */
export function launch(settings = []) {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: [...ARGUMENTS, ...settings] });
}

/** A page in a context of its own; what it asks of anything but files, and what it complains of, lands in `faults`. */
export async function open(browser, options = {}) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const faults = [];
  page.on("request", (request) => {
    if (!/^(file|data|blob):/.test(request.url())) {
      faults.push(`asks for ${request.url()}`);
    }
  });
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) {
      faults.push(`console: ${message.text()}`);
    }
  });
  page.on("pageerror", (error) => faults.push(`script: ${error.message}`));
  return { page, faults, done: () => context.close() };
}
