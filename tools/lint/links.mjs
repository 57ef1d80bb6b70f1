// Every relative link of every page leads to a file; decisions are numbered without a gap.
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { linesOf, trackedFiles } from "../tracked_files.mjs";

export default {
  name: "lint-links",
  run() {
    const faults = [];
    const files = trackedFiles();
    for (const name of files.filter((file) => file.endsWith(".md"))) {
      linesOf(name).forEach((line, index) => {
        for (const [, target] of line.matchAll(/\]\(([^)\s#]+)[^)]*\)/g)) {
          if (/^[a-z]+:/.test(target)) continue;
          if (!existsSync(join(dirname(name), target))) faults.push(`${name}:${index + 1}: no such file: ${target}`);
        }
      });
    }
    const decisions = files.filter((file) => /^docs\/decisions\/.*\.md$/.test(file));
    decisions.forEach((name, index) => {
      const number = String(index + 1).padStart(4, "0");
      if (!name.startsWith(`docs/decisions/${number}-`)) faults.push(`${name}: decision ${number} was expected here`);
    });
    return faults;
  },
};
