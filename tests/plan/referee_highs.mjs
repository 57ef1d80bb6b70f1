// Solves LP files with HiGHS. For each FILE.lp it writes FILE.lp.answer: first 'status objective seconds',
// then a line 'column value' for each column that is not 0.
// usage: node referee_highs.mjs LIST     LIST names one LP file a line
import { readFileSync, writeFileSync } from "node:fs";
import loadHighs from "highs";

const highs = await loadHighs();
for (const file of readFileSync(process.argv[2], "utf8").split("\n").filter(Boolean)) {
  const text = readFileSync(file, "utf8");
  const before = process.cpuUsage();
  const answer = highs.solve(text, { threads: 1, mip_rel_gap: 0, mip_abs_gap: 0.999, time_limit: 120 });
  const used = process.cpuUsage(before);
  const status = answer.Status.replaceAll(" ", "_");
  const lines = [`${status} ${answer.ObjectiveValue ?? 0} ${(used.user + used.system) / 1e6}`];
  for (const [name, column] of Object.entries(answer.Columns)) {
    if (column.Primal) lines.push(`${name} ${column.Primal}`);
  }
  writeFileSync(`${file}.answer`, `${lines.join("\n")}\n`);
}
