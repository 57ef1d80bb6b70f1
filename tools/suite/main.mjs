// Runs the checks of one mode and ends with one line, 'N passed, N failed'; N counts cases. Where all are run, those that
// keep one core busy run beside each other, and those that measure how soon something is run alone.
// usage: node tools/suite/main.mjs plain|long|sanitize|reference [name...]
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { cli } from "../../tests/cli/cli.mjs";
import { deskBaselines } from "../../tests/desk/baselines.mjs";
import { desk } from "../../tests/desk/desk.mjs";
import { deskFigures } from "../../tests/desk/figures.mjs";
import { parity } from "../../tests/parity/parity.mjs";
import { baselines } from "../../tests/pitchside/baselines.mjs";
import { figures } from "../../tests/pitchside/figures.mjs";
import { pitch } from "../../tests/pitchside/pitch.mjs";
import { pocket } from "../../tests/pitchside/pocket.mjs";
import { soak } from "../../tests/pitchside/soak.mjs";
import { browser } from "../../tests/report/browser.mjs";
import { serve } from "../../tests/serve/serve.mjs";
import { builtTests } from "./built_tests.mjs";
import { evidenceInR } from "./evidence_in_r.mjs";
import { fuzzers } from "./fuzzers.mjs";
import { lints } from "./lints.mjs";
import { lintsBite } from "./lints_bite.mjs";
import { referee } from "./referee.mjs";
import { theProgram } from "./the_program.mjs";

const kLongFuzzSeconds = 900;

// Lanes beside each other, each in a process of its own, from where the first of them would stand. What is asked for by name
// does all of its work, and lint-tidy is not: it does a share each time, and keeps all cores busy by itself.
const kBeside = [
  [["cli"], ["browser", "pitch", "desk"]],
  [["pocket"], ["baselines", "desk-baselines", "parity", lintsBite.name, ...lints.map(({ name }) => name).filter((name) => name !== "lint-tidy")]],
];
const kShare = 20;  // the plain run takes a twentieth of the long one

function checksOf(mode) {
  if (mode === "sanitize") return [builtTests("sanitize"), theProgram, cli, serve];
  if (mode === "reference") return [referee, evidenceInR];
  const seconds = mode === "long" ? kLongFuzzSeconds : kLongFuzzSeconds / kShare;
  return [builtTests(mode), theProgram, cli, serve, browser, pitch, pocket, desk, baselines, deskBaselines, figures, ...(mode === "long" ? [deskFigures, soak] : []), parity, fuzzers(seconds), lintsBite, ...lints];
}

// Which checks, and which test programs within 'tests', the names on the command line mean.
async function choose(checks, names, context) {
  if (names.length === 0) return checks.map((check) => ({ check }));
  const programs = await checks[0].list?.(context) ?? [];
  const chosen = programs.filter((program) => names.includes(program));
  const picked = [];
  for (const check of checks) {
    if (check.list && chosen.length > 0 && !names.includes(check.name)) picked.push({ check, chosen });
    else if (names.some((name) => check.name === name || check.name === `lint-${name}` || (name === "lint" && check.name.startsWith("lint-")))) {
      picked.push({ check });
    }
  }
  const known = new Set([...programs, "lint", ...checks.flatMap((check) => [check.name, check.name.replace("lint-", "")])]);
  for (const name of names.filter((word) => !known.has(word))) {
    throw new Error(`no check is called ${name}; there are: ${[...known].join(" ")}`);
  }
  return picked;
}

function indent(text) {
  const lines = text.trim().split("\n");
  const shown = lines.slice(0, 40).map((line) => `      ${line}`);
  if (lines.length > shown.length) shown.push(`      ... ${lines.length - shown.length} lines more`);
  return shown.join("\n");
}

async function runCheck({ check, chosen }, context) {
  const from = Date.now();
  let results;
  try {
    results = await check.run({ ...context, chosen, named: names.length > 0 });
  } catch (error) {
    results = [{ name: check.name, passed: false, detail: error.stack }];
  }
  const failed = results.filter((result) => !result.passed);
  const notes = results.filter((result) => result.note).map((result) => `${result.name}: ${result.note}`);
  const seconds = ((Date.now() - from) / 1000).toFixed(1);
  console.log(`  ${check.name}: ${results.length - failed.length} passed, ${failed.length} failed (${seconds} s)`);
  for (const note of notes) console.log(`    ${note}`);
  for (const result of failed) console.log(`    FAILED ${result.name}\n${indent(result.detail ?? "")}`);
  return results;
}

// These checks by this program in a process of its own: what it said, and how many passed and failed.
function apart(mode, names) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [fileURLToPath(import.meta.url), mode, ...names], { stdio: ["ignore", "pipe", "inherit"] });
    let said = "";
    child.stdout.on("data", (bytes) => (said += bytes));
    child.on("close", () => {
      const [, shown, passed, failed] = /^([^]*?)(\d+) passed, (\d+) failed\n$/.exec(said) ?? [undefined, said, 0, 1];
      process.stdout.write(shown);
      resolve({ passed: Number(passed), failed: Number(failed) });
    });
  });
}

const [mode, ...names] = process.argv.slice(2);
const context = { mode, build: mode === "sanitize" ? "build/asan" : "build/test", wasm: "build/wasm/lanework.wasm" };
let passed = 0;
let failed = 0;
const count = (some) => {
  passed += some.passed;
  failed += some.failed;
};
try {
  const chosen = await choose(checksOf(mode), names, context);
  const begun = new Set();
  for (const picked of chosen) {
    const beside = names.length === 0 ? kBeside.find((lanes) => lanes.flat().includes(picked.check.name)) : undefined;
    if (beside && !begun.has(beside)) {
      begun.add(beside);
      const lanes = beside.map((lane) => lane.filter((name) => chosen.some(({ check }) => check.name === name))).filter((lane) => lane.length > 0);
      (await Promise.all(lanes.map((lane) => apart(mode, lane)))).forEach(count);
    }
    if (beside) continue;
    const results = await runCheck(picked, context);
    const bad = results.filter((result) => !result.passed).length;
    count({ passed: results.length - bad, failed: bad });
  }
} catch (error) {
  console.error(error.message);
  process.exit(2);
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
