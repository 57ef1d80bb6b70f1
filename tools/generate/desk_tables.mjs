// web/desk/injuries/*.json from the catalogue: the terms of the records with the words they are read from, and the steps of
// a way back with their gates. As a program it writes them; the lint compares.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const kFields = ["region", "side", "tissue", "setting", "onset", "contact", "activity", "recurrence"];
const written = (value) => `${JSON.stringify(value, null, 1)}\n`;
const keyOf = (block, name) => new RegExp(`^${name} = "([^"]+)"`, "m").exec(block)?.[1];

function termsOf(text) {
  const out = Object.fromEntries(kFields.map((field) => [field, {}]));
  for (const block of text.split(/^(?=\[\[)/m)) {
    const field = /^\[\[([\w-]+)\]\]/.exec(block)?.[1];
    if (!kFields.includes(field)) continue;
    out[field][keyOf(block, "key")] = JSON.parse(/^read_as = (\[.*\])$/m.exec(block)?.[1] ?? "[]");
  }
  return out;
}

function coursesOf(text) {
  const out = {};
  let course;
  for (const block of text.split(/^(?=\[)/m)) {
    if (block.startsWith("[[course]]")) course = out[keyOf(block, "id")] = [];
    if (block.startsWith("[[course.step]]")) course.push({ step: keyOf(block, "key"), gate: keyOf(block, "gate") ?? "" });
  }
  return out;
}

export function deskTables() {
  return new Map([
    ["web/desk/injuries/record_terms.json", written(termsOf(readFileSync("catalogue/record_terms.toml", "utf8")))],
    ["web/desk/injuries/return_steps.json", written(coursesOf(readFileSync("catalogue/care/return_rules.toml", "utf8")))],
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) for (const [path, text] of deskTables()) writeFileSync(path, text);
