// Code that stands twice: the same run of lines in two places, spacing, braces alone and includes apart.
import { linesOf, sources } from "../tracked_files.mjs";

const kRun = 14;

function tellingLines(name) {
  return linesOf(name)
    .map((line, index) => [line.replace(/\/\/.*/, "").trim(), index + 1])
    .filter(([line]) => line.length > 3 && !line.startsWith("#") && !/^[})\];,\s]*$/.test(line));
}

export default {
  name: "lint-copies",
  run() {
    const faults = [];
    const firstAt = new Map();
    for (const name of sources(/\.(cpp|h|mjs|ts)$/)) {
      const lines = tellingLines(name);
      let quietUntil = 0;
      for (let start = 0; start + kRun <= lines.length; start++) {
        const run = lines.slice(start, start + kRun).map(([line]) => line).join("\n");
        const place = `${name}:${lines[start][1]}`;
        const other = firstAt.get(run);
        if (other === undefined) firstAt.set(run, place);
        else if (start >= quietUntil) {
          faults.push(`${place}: ${kRun} lines or more stand at ${other} too`);
          quietUntil = start + kRun;
        }
      }
    }
    return faults;
  },
};
