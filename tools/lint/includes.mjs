// Who includes whom, held against tools/allowed_includes.txt: a new edge is a fault, and so is an allowed edge
// that no longer exists, and an include that names no file from the root.
import { existsSync } from "node:fs";
import { linesOf, sources } from "../tracked_files.mjs";

const kAllowed = "tools/allowed_includes.txt";

function allowedEdges() {
  const edges = new Map();
  linesOf(kAllowed).forEach((line, index) => {
    const [from, to] = line.replace(/#.*/, "").split(":");
    if (to === undefined) return;
    for (const target of to.split(/\s+/).filter(Boolean)) edges.set(`${from.trim()} -> ${target}`, index + 1);
  });
  return edges;
}

function roomOf(name) {
  const parts = name.split("/").slice(0, -1);
  return parts[0] === "core" || parts[0] === "app" ? parts.slice(0, 2).join("/") : parts[0];
}

export default {
  name: "lint-includes",
  run() {
    const faults = [];
    const allowed = allowedEdges();
    const seen = new Set();
    for (const name of sources()) {
      const from = roomOf(name);
      // Tests, fuzzers and benchmarks may look at anything; nothing looks at them.
      const judged = from.startsWith("core/") || from.startsWith("app/") || from === "wasm";
      linesOf(name).forEach((line, index) => {
        const found = /^\s*#\s*include\s+"([^"]+)"/.exec(line);
        if (!found) return;
        if (!existsSync(found[1])) faults.push(`${name}:${index + 1}: "${found[1]}" is no file from the root`);
        const to = roomOf(found[1]);
        const edge = `${from} -> ${to}`;
        if (!judged || from === to) return;
        seen.add(edge);
        if (!allowed.has(edge)) faults.push(`${name}:${index + 1}: ${edge} is not allowed, see ${kAllowed}`);
      });
    }
    for (const [edge, line] of allowed) {
      if (!seen.has(edge)) faults.push(`${kAllowed}:${line}: nothing goes ${edge} any more, strike it`);
    }
    return faults;
  },
};
