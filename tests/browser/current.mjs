// Is my card current: what the page says of every card that was ever issued, against the editions' files, which hold
// each value as JSON on a line of its own.

import { execFileSync } from "node:child_process";
import { appendFileSync, cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { check, equal, holds, open } from "./kit.mjs";

const ROOT = new URL("../..", import.meta.url).pathname;
const SEVERAL = "Several cards can be meant: type the whole number";
const OVERRULED = "a newer edition or a hold notice overrules this";

export async function current(browser, site, program) {
  const issued = editions(join(ROOT, "content/register"));
  await typed(browser, site, issued);
  await withoutScripts(browser, site, issued);
  await withdrawn(browser, program);
}

/** The editions of a register, the first one first: name, date, and cards by number. */
function editions(folder) {
  const files = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
  const read = files.map((name) => {
    const lines = readFileSync(join(folder, name), "utf8").split("\n");
    const heading = (key) => JSON.parse(lines.find((line) => line.startsWith(`${key}: `)).slice(key.length + 2));
    const cards = lines.slice(lines.indexOf("cards:") + 1, lines.indexOf("prints:")).map((line) => JSON.parse(line.slice(2)));
    return { name: heading("edition"), date: heading("date"), cards };
  });
  return read.sort((one, other) => one.date.localeCompare(other.date));
}

/** Every issue of every card, with the edition that it is from. */
function issues(all) {
  return all.flatMap((edition) => edition.cards.filter((card) => card.since === edition.name));
}

async function asking(page) {
  const answer = page.locator("[data-tool=current] .answer");
  return async (number, code) => {
    await page.locator("[name=number]").fill(number);
    await page.locator("[name=code]").fill(code);
    return answer.textContent();
  };
}

async function typed(browser, site, all) {
  const { page, faults, done } = await open(browser);
  await page.goto(site.address("current.html"));
  const ask = await asking(page);
  const newest = all.at(-1);
  const now = new Map(newest.cards.map((card) => [card.number, card]));
  // By the records: a hold that waits to be issued counts already.
  const held = ["ST-4240"];
  const good = newest.cards.filter((card) => card.status === "current" && !held.includes(card.number));
  holds(good.length > 0 && all.length > 1, "the demo has several editions and cards that are good");
  for (const card of good) {
    await check(`${card.number} of the newest edition is good`, async () => {
      equal(await ask(card.number, card.check_code), `${card.number} issue ${card.issue}: good by edition ${newest.name} of ${newest.date}: ${OVERRULED}`, "answer");
    });
  }
  const older = issues(all).filter((card) => now.get(card.number).issue > card.issue);
  holds(older.length > 0, "the demo has an issue that another has taken the place of");
  for (const card of older) {
    await check(`${card.number} issue ${card.issue} is not good any more`, async () => {
      const { issue, status, since } = now.get(card.number);
      const answer = await ask(card.number, card.check_code);
      holds(answer.startsWith(`${card.number} issue ${card.issue}: superseded by `), answer);
      holds(status !== "current" || answer.includes(`superseded by issue ${issue} of edition ${since}: hand it in`), answer);
      equal(answer.includes("good"), false, "good");
    });
  }
  await check("what is on hold stops, what is superseded is handed in", async () => {
    equal(await ask("ST-4240", now.get("ST-4240").check_code), "ST-4240 issue 1: on hold: stop until told", "on hold");
    const superseded = await ask("ST-4080", now.get("ST-4080").check_code);
    equal(superseded, "ST-4080 issue 2: superseded by ST-4100: do not use. Hand the card in", "superseded");
  });
  await alike(ask, issues(all));
  await numbers(ask, good);
  await doubtful(browser, site, good);
  await check("what no edition holds is unknown", async () => {
    const [one, two] = good;
    for (const [number, code] of [[one.number, two.check_code], ["ST-9999", one.check_code], [one.number, "ZZZZZZ"]]) {
      const answer = await ask(number, code);
      holds(answer.startsWith("unknown: no edition holds this number with this code"), `${number} ${code}: ${answer}`);
    }
    equal(await ask(one.number, "7K3"), "A check code has six characters.", "a code that is too short");
    equal(await ask(one.number, ""), "", "nothing typed");
  });
  await check("a draft must not be used", async () => {
    equal(await ask(good[0].number, "draft, not issued"), "a draft: it was never issued, and must not be used", "draft");
  });
  await check("the page asks for nothing", async () => equal(faults.join("\n"), "", "faults"));
  await done();
}

/** Crockford's base 32 takes O for 0, and I and L for 1 (its publication); signs between and small letters too. */
async function alike(ask, cards) {
  const withDigits = cards.filter((card) => /[01]/.test(card.check_code));
  holds(["0", "1"].every((digit) => withDigits.some((card) => card.check_code.includes(digit))), "codes with 0 and with 1");
  for (const { number, check_code: code, issue } of withDigits) {
    await check(`${code} may be typed with letters that look like its digits`, async () => {
      const ways = [code.replaceAll("0", "O").replaceAll("1", "I"), code.replaceAll("0", "o").replaceAll("1", "l"), code.replaceAll("1", "L")];
      for (const way of [...ways, ` ${code.slice(0, 3)}-${code.slice(3).toLowerCase()} `]) {
        const answer = await ask(` ${number.toLowerCase()}`, way);
        holds(answer.startsWith(`${number} issue ${issue}: `), `${way}: ${answer}`);
      }
    });
  }
}

/** A number with another hyphen, without one, or by its last digits alone. */
async function numbers(ask, [{ number, check_code: code, issue }]) {
  const [head, tail] = number.split("-");
  const found = `${number} issue ${issue}: `, unknown = "unknown: ";
  const answers = (typed, expected, given = code) => check(`${typed} with ${given} typed for ${number}`, async () => {
    const answer = await ask(typed, given);
    holds(answer.startsWith(expected), answer);
  });
  const hyphens = ["\u2010", "\u2011", "\u2013", "\u2212"].map((hyphen) => head + hyphen + tail);
  for (const typed of [...hyphens, `${head} ${tail}`, `${head} - ${tail}`, head + tail, `${head} ${tail}`.toLowerCase(), (head + tail).toLowerCase(), tail]) {
    await answers(typed, found);
  }
  for (const typed of [tail.slice(1), `9${tail}`, `${head}${tail}0`, head]) {
    await answers(typed, unknown);
  }
  await answers(tail.slice(-1), SEVERAL);
  // The code is as strict as it was.
  await answers(tail, "A check code has six characters.", code.slice(1));
  await answers(tail, unknown, `${code}0`);
}

/** Cards whose numbers differ by a hyphen only, or by their beginning: a copy of the page with two cards more. */
async function doubtful(browser, site, [{ number, check_code: code }]) {
  const folder = mkdtempSync(join(tmpdir(), "numbers-"));
  const [head, tail] = number.split("-"), bare = head + tail, other = `QX-${tail}`;
  try {
    const from = dirname(fileURLToPath(site.address("current.html")));
    readdirSync(from).filter((name) => /\.(js|css)$/.test(name)).forEach((name) => cpSync(join(from, name), join(folder, name)));
    const written = site.text("current.html").replace(/("current-data">)(.*?)(<\/script>)/s, (_, before, data, after) => {
      const table = JSON.parse(data), first = table.cards.find((card) => card.code === code);
      table.cards.push({ ...first, number: bare }, { ...first, number: other });
      return before + JSON.stringify(table) + after;
    });
    writeFileSync(join(folder, "current.html"), written);
    const { page, done } = await open(browser);
    await page.goto(`file://${join(folder, "current.html")}`);
    const ask = await asking(page);
    for (const [typed, expected] of [[number, `${number} issue`], [bare, `${bare} issue`], [other, `${other} issue`], [`${head} ${tail}`, SEVERAL], [tail, SEVERAL]]) {
      await check(`${typed} among numbers that are alike`, async () => {
        const answer = await ask(typed, code);
        holds(answer.startsWith(expected), answer);
      });
    }
    await done();
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function withoutScripts(browser, site, all) {
  const { page, done } = await open(browser, { javaScriptEnabled: false });
  await page.goto(site.address("current.html"));
  await check("with scripts off, a table holds every card that was ever issued", async () => {
    equal(await page.locator("input:visible").count(), 0, "boxes that would do nothing");
    const rows = await page.locator("main table tbody tr").evaluateAll((all) => all.map((row) => [...row.cells].map((cell) => cell.textContent.trim())));
    const found = rows.map((row) => row.slice(0, 4).join(" ")).sort();
    const expected = issues(all).map((card) => [card.number, card.check_code, card.issue, card.since].join(" ")).sort();
    equal(found.join("\n"), expected.join("\n"), "number, code, issue, edition");
    holds(rows.every((row) => row[4] !== ""), "each says what a copy is worth");
    equal(await page.locator("main table").isVisible(), true, "seen");
  });
  await done();
}

/** A small catalogue whose one fitting was issued, and is withdrawn since. */
async function withdrawn(browser, program) {
  const folder = mkdtempSync(join(tmpdir(), "current-"));
  try {
    cpSync(join(ROOT, "tests/findings/copies-still-out"), join(folder, "content"), { recursive: true });
    rmSync(join(folder, "content/expected.txt"));
    appendFileSync(join(folder, "content/fittings/end.yaml"), "status: withdrawn\nin_service: may-stay\n");
    execFileSync(program, ["render", "--quiet", "--preview-dpi", "30", "--catalogue", join(folder, "content"), "--output", join(folder, "output")], { stdio: "ignore" });
    const { page, done } = await open(browser);
    await page.goto(`file://${join(folder, "output/booklet/current.html")}`);
    const ask = await asking(page);
    for (const { number, issue, check_code: code } of issues(editions(join(folder, "content/register")))) {
      await check(`a withdrawn card is handed in, issue ${issue}`, async () => {
        equal(await ask(number, code), `${number} issue ${issue}: withdrawn: do not use, and hand the card in`, "answer");
      });
    }
    await done();
  } finally {
    rmSync(folder, { recursive: true });
  }
}
