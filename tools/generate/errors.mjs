// docs/errors.md from core/base/faults.def. As a program it writes the page; the lint compares.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const kPage = "docs/errors.md";
const kTable = "core/base/faults.def";

export function errorsPage() {
  const rows = [...readFileSync(kTable, "utf8").matchAll(
    /^LANEWORK_FAULT\(\s*(\w+),\s*"([^"]+)",\s*(\d+),\s*(\d+),\s*"([^"]+)"\)/gm)];
  if (rows.length === 0) throw new Error(`${kTable}: no row is understood`);
  const lines = rows.map(([, , key, exit, http, sentence]) => `| \`${key}\` | ${sentence} | ${exit} | ${http} |`);
  return `# Faults

Made from \`${kTable}\` by \`node tools/generate/errors.mjs\`; change the table, not this page.

Every fault is one line, \`file:line:column: field: found ..., expected ...\`, and in JSON an object with its
\`code\`. Nothing is written when there is a fault.

| code | meaning | exit status | HTTP status |
|---|---|---|---|
${lines.join("\n")}
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(kPage, errorsPage());
