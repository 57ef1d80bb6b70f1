// Words that must not stand in tracked files: unfinished work, paths of one machine, addresses of package
// registries, keys.
import { readFileSync } from "node:fs";
import { trackedFiles } from "../tracked_files.mjs";

// Written so that this file does not find itself.
const kBarred = [
  [/\b(?:TO[D]O|FIX[M]E|X[X]X|HA[C]K)\b/, "unfinished work"],
  [/(?<![\w.])\/(?:wor[k]|hom[e]\/\w+|roo[t]|User[s]\/\w+)\//, "a path of one machine"],
  [/registry\.npm[j]s|registry\.yarn[p]kg|deb\.debia[n]\.org|files\.python[h]osted|proxy\.gol[a]ng/, "a registry's address"],
  [/"resolve[d]":\s*"http/, "a download address"],
  [/-----BEGIN [A-Z ]*PRIVATE KE[Y]-----|\bnpm_[A-Za-z0-9]{30}|\bghp_[A-Za-z0-9]{30}/, "a key"],
  [/<{7} |>{7} /, "an unresolved merge"],
];

export default {
  name: "lint-words",
  run() {
    const faults = [];
    for (const name of trackedFiles()) {
      const bytes = readFileSync(name);
      if (bytes.includes(0)) continue;
      bytes.toString("utf8").split("\n").forEach((line, index) => {
        for (const [pattern, meaning] of kBarred) {
          const found = pattern.exec(line);
          if (found) faults.push(`${name}:${index + 1}: ${meaning}: ${found[0]}`);
        }
      });
    }
    return faults;
  },
};
