// clang-tidy with the checks of .clang-tidy. The plain run reads a third of core, app and wasm, chosen by what stands in
// the files, many as one where their names allow it; './test tidy' reads them all so, and the long run each file by
// itself, tests included. What was clean and has not changed since,
// headers and settings included, is not read again.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { linesOf } from "../tracked_files.mjs";
import { inParallel, runProgram } from "../suite/programs.mjs";
import { batchesOf } from "./tidy_batches.mjs";

const kFolder = "build/tidy";
const kShare = 3;
const kQuiet = ["--quiet", "--extra-arg=-Wno-unknown-warning-option"];

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

// Each compiled file once, with how it is compiled apart from its own name and from headers that GCC keeps parsed.
function compiled(build) {
  const commands = JSON.parse(readFileSync(`${build}/compile_commands.json`, "utf8"));
  const root = `${process.cwd()}/`;
  const byFile = new Map(commands.map(({ file, command }) =>
    [file.replace(root, ""), command.replace(/ -o \S+ -c \S+$/, "").replace(/^.*?(?= -)/, "c++")
      .replace(/ -include \S+cmake_pch\S*| -Winvalid-pch| -fpch-preprocess/g, "")]));
  return [...byFile].map(([file, flags]) => ({ file, flags })).sort((a, b) => (a.file < b.file ? -1 : 1));
}

async function faultsAlone(file) {
  const said = await runProgram("clang-tidy", [...kQuiet, "-p", kFolder, file]);
  if (said.status === 0) return [];
  const lines = said.output.split("\n").filter((line) => /: (error|warning):/.test(line));
  return lines.length > 0 ? lines : [`${file}: ${said.output.slice(0, 400)}`];
}

// Whether these files are clean when read as one. A no may also mean that their names met.
async function cleanTogether(flags, files, number) {
  const folder = `${process.cwd()}/${kFolder}/${number}`;
  mkdirSync(folder, { recursive: true });
  const file = `${folder}/together.cpp`;
  writeFileSync(file, files.map((name) => `#include "${process.cwd()}/${name}"\n`).join(""));
  writeFileSync(`${folder}/compile_commands.json`, JSON.stringify([{ directory: folder, file, command: `${flags} -c ${file}` }]));
  return (await runProgram("clang-tidy", [...kQuiet, "--checks=-bugprone-suspicious-include", "-p", folder, file])).status === 0;
}

// Faults of files read as one, by halves where they are not clean so, and by themselves in the end.
async function faultsTogether({ flags, files }, number) {
  if (files.length === 1) return faultsAlone(files[0]);
  if (await cleanTogether(flags, files, number)) return [];
  const half = Math.ceil(files.length / 2);
  const first = await faultsTogether({ flags, files: files.slice(0, half) }, number);
  return [...first, ...await faultsTogether({ flags, files: files.slice(half) }, number)];
}

export default {
  name: "lint-tidy",
  async run({ build, mode, named }) {
    mkdirSync(kFolder, { recursive: true });
    const alone = mode === "long";
    const kept = `${kFolder}/clean-${alone ? "alone" : "together"}.json`;
    const clean = existsSync(kept) ? JSON.parse(readFileSync(kept, "utf8")) : {};
    const states = new Map();
    const all = compiled(build);
    writeFileSync(`${kFolder}/compile_commands.json`, JSON.stringify(all.map(({ file, flags }) =>
      ({ directory: process.cwd(), file: `${process.cwd()}/${file}`, command: `${flags} -c ${process.cwd()}/${file}` }))));
    const waiting = all.filter(({ file }) => {
      if (!alone && !/^(core|app|wasm)\//.test(file)) return false;
      states.set(file, stateOf(file));
      return clean[file] !== states.get(file);
    });
    const faults = [];
    const whole = alone ? waiting.map(({ file, flags }) => ({ flags, files: [file] })) : batchesOf(waiting);
    const seed = createHash("sha256").update([...states.values()].join()).digest().readUInt32BE() % kShare;
    const batches = alone || named ? whole : whole.filter((_, at) => at % kShare === seed);
    await inParallel([...batches.entries()].sort(([, a], [, b]) => b.files.length - a.files.length), async ([number, batch]) => {
      const found = await faultsTogether(batch, number);
      if (found.length === 0) batch.files.forEach((file) => { clean[file] = states.get(file); });
      faults.push(...found);
    });
    writeFileSync(kept, JSON.stringify(clean, null, 1));
    return [...new Set(faults)].map((line) => line.replace(`${process.cwd()}/`, "")).sort();
  },
};
