// Figures as a table for somebody to read: what was aimed at, what was seen, and on what machine.
import { cpus, loadavg } from "node:os";

export const bytes = (number) => `${(number / 1000).toFixed(1)} kB`;
export const megabytes = (number) => `${(number / 1e6).toFixed(1)} MB`;
export const milliseconds = (number) => `${number.toFixed(number < 100 ? 1 : 0)} ms`;

// rows: {figure, aim, seen, met, more}
export function table(rows) {
  const widths = ["figure", "aim", "seen"].map((key) => Math.max(key.length, ...rows.map((row) => row[key].length)));
  const line = ({ figure, aim, seen, met, more = "" }) => `${figure.padEnd(widths[0])}  ${aim.padStart(widths[1])}  ${seen.padStart(widths[2])}  ${met ? "    " : "over"}  ${more}`.trimEnd();
  // Times on a machine with more to do than cores are too long, so how much that was is said too.
  const machine = `${cpus().length} cores of ${cpus()[0].model.trim()}, load ${loadavg().slice(0, 2).map((one) => one.toFixed(1)).join(" and ")} in the last 1 and 5 minutes`;
  return [line({ figure: "figure", aim: "aim", seen: "seen", met: true }), ...rows.map(line), machine].join("\n");
}
