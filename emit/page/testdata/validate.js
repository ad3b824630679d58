// Judges pages named on the command line by html-validate's recommended rules and prints what
// it finds. It is the outside check's eye and no part of the page.
"use strict";
const { readFileSync } = require("node:fs");
const { HtmlValidate } = require("html-validate");
const rules = {
  // The writer gives every attribute a value, as XML must have it: the tests read pages as both.
  "attribute-boolean-style": "off",
  // How wide a drawing may be follows from the size of its own type.
  "no-inline-style": "off",
  // On a phone rows are set as cards, and browsers forget what is no longer set as a table.
  "no-redundant-role": "off",
};
const judge = new HtmlValidate({ root: true, extends: ["html-validate:recommended"], rules });
(async () => {
  for (const file of process.argv.slice(2)) {
    const report = await judge.validateString(readFileSync(file, "utf8"));
    for (const { messages } of report.results) {
      for (const m of messages) console.log(`${m.line}:${m.column} ${m.ruleId}: ${m.message}`);
    }
  }
})();
