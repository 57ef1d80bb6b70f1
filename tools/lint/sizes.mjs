// Files stay small: the median below 200 lines, none above 600. (Functions: readability-function-size.)
import { linesOf, sources } from "../tracked_files.mjs";

const kMedianLines = 200;
const kMostLines = 600;

export default {
  name: "lint-sizes",
  run() {
    const faults = [];
    const sizes = sources(/\.(cpp|h|mjs|ts|sh)$/).map((name) => [linesOf(name).length, name]);
    for (const [lines, name] of sizes) {
      if (lines > kMostLines) faults.push(`${name}: ${lines} lines, more than ${kMostLines}`);
    }
    const median = sizes.map(([lines]) => lines).sort((a, b) => a - b)[Math.floor(sizes.length / 2)] ?? 0;
    if (median >= kMedianLines) faults.push(`the median file has ${median} lines, ${kMedianLines} or more`);
    return faults;
  },
};
