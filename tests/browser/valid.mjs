// Every page is valid HTML (html-validate: its standard and accessibility rules).

import { HtmlValidate } from "html-validate";
import { check, holds } from "./kit.mjs";

const RULES = {
  // Matters of style: the pages are for reading, not for a tool's taste.
  "long-title": "off",
  // Any text without a space is an id (HTML, 3.2.6); records' ids have dots.
  "valid-id": ["error", { relaxed: true }],
  "no-trailing-whitespace": "off",
  "attribute-boolean-style": "off",
  "prefer-native-element": ["error", { exclude: ["button", "status"] }],
};

export async function valid(site, otherRules = {}) {
  const validator = new HtmlValidate({ extends: ["html-validate:recommended"], rules: { ...RULES, ...otherRules } });
  for (const name of site.pages) {
    await check(`${name} is valid`, async () => {
      const report = await validator.validateString(site.text(name), name);
      const messages = report.results.flatMap((result) => result.messages);
      holds(report.valid, messages.slice(0, 10).map((message) => `${message.line}:${message.column} ${message.ruleId}: ${message.message}`).join("\n"));
    });
  }
}
