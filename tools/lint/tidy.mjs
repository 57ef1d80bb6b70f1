// clang-tidy with the checks of .clang-tidy, file by file; what was clean and has not changed since, headers
// and settings included, is not read again.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { linesOf } from "../tracked_files.mjs";
import { inParallel, runProgram } from "../suite/programs.mjs";

const kClean = "build/tidy-clean.json";

function withHeaders(name, seen = new Set()) {
  if (seen.has(name) || !existsSync(name)) return seen;
  seen.add(name);
  for (const line of linesOf(name)) {
    const found = /^\s*#\s*include\s+"([^"]+)"/.exec(line);
    if (found) withHeaders(found[1], seen);
  }
  return seen;
}

function stateOf(name) {
  const hash = createHash("sha256").update(readFileSync(".clang-tidy"));
  for (const part of [...withHeaders(name)].sort()) hash.update(part).update(readFileSync(part));
  return hash.digest("hex");
}

function compiledFiles(build) {
  const commands = JSON.parse(readFileSync(`${build}/compile_commands.json`, "utf8"));
  const root = `${process.cwd()}/`;
  return [...new Set(commands.map(({ file }) => file.replace(root, "")))].sort();
}

export default {
  name: "lint-tidy",
  async run({ build, mode }) {
    mkdirSync("build", { recursive: true });
    const clean = existsSync(kClean) ? JSON.parse(readFileSync(kClean, "utf8")) : {};
    const judged = (name) => mode === "long" || /^(core|app|wasm)\//.test(name);
    const waiting = compiledFiles(build).filter(judged).map((name) => [name, stateOf(name)])
      .filter(([name, state]) => clean[name] !== state);
    const faults = [];
    await inParallel(waiting, async ([name, state]) => {
      const said = await runProgram("clang-tidy", ["--quiet", "--extra-arg=-Wno-unknown-warning-option", "-p", build, name]);
      if (said.status === 0) clean[name] = state;
      const lines = said.output.split("\n").filter((line) => /: (error|warning):/.test(line));
      if (said.status !== 0) faults.push(...(lines.length > 0 ? lines : [`${name}: ${said.output.slice(0, 400)}`]));
    });
    writeFileSync(kClean, JSON.stringify(clean, null, 1));
    return [...new Set(faults)].map((line) => line.replace(`${process.cwd()}/`, "")).sort();
  },
};
