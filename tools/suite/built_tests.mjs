// The test programs of one build, run by ctest; every case of every GoogleTest program counts.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { cpus } from "node:os";
import { runProgram } from "./programs.mjs";

function casesOf(report) {
  const cases = [];
  for (const suite of report.testsuites ?? []) {
    for (const test of suite.testsuite ?? []) {
      if (test.status !== "RUN" || test.result === "SKIPPED") continue;
      cases.push({
        name: `${suite.name}.${test.name}`,
        passed: !test.failures,
        note: test.note,
        detail: (test.failures ?? []).map(({ failure }) => failure).join("\n"),
      });
    }
  }
  return cases;
}

// One program's results. A program that failed though its cases did not (it crashed, or a sanitizer spoke after
// the last case) is one failure more.
function resultsOf(name, passed, output, folder) {
  const report = `${folder}/test_${name}.json`;
  let cases = [];
  try {
    if (existsSync(report)) cases = casesOf(JSON.parse(readFileSync(report, "utf8")));
  } catch {
    cases = [];
  }
  if (cases.length === 0) return [{ name, passed, detail: passed ? "" : output }];
  if (!passed && cases.every((test) => test.passed)) cases.push({ name: `${name} (whole program)`, passed, detail: output });
  return cases.map((test) => ({ ...test, name: test.name.startsWith(name) ? test.name : `${name}: ${test.name}` }));
}

export function builtTests(mode) {
  return {
    name: "tests",
    async list({ build }) {
      const said = await runProgram("ctest", ["--test-dir", build, "--show-only=json-v1"]);
      return JSON.parse(said.answer).tests.map((test) => test.name);
    },
    async run({ build, chosen }) {
      const folder = `${build}/results`;
      rmSync(folder, { recursive: true, force: true });
      mkdirSync(folder, { recursive: true });
      const successes = mode === "long" ? 2000 : 100;
      const environment = {
        GTEST_OUTPUT: `json:${process.cwd()}/${folder}/`,
        RC_PARAMS: `seed=20261126 max_success=${successes}`,
        LANEWORK_SIMULATED_CLUBS: String(successes),
        ASAN_OPTIONS: "detect_leaks=1:strict_string_checks=1",
        LSAN_OPTIONS: `suppressions=${process.cwd()}/tools/suite/leaks_of_libraries.txt:print_suppressions=0`,
        UBSAN_OPTIONS: "print_stacktrace=1",
      };
      const names = chosen ? ["-R", `^(${chosen.join("|")})$`] : [];
      await runProgram("ctest", ["--test-dir", build, "-j", String(cpus().length), "--timeout", mode === "plain" ? "600" : "3600",
        "--output-junit", "results/ctest.xml", ...names], { environment });
      const results = [];
      const junit = existsSync(`${folder}/ctest.xml`) ? readFileSync(`${folder}/ctest.xml`, "utf8") : "";
      for (const [, attributes, body] of junit.matchAll(/<testcase ([^>]*)>([\s\S]*?)<\/testcase>/g)) {
        const name = /name="([^"]*)"/.exec(attributes)[1];
        const passed = /status="run"/.test(attributes);
        results.push(...resultsOf(name, passed, body.replace(/&#10;/g, "\n").slice(-4000), folder));
      }
      if (readdirSync(folder).length === 0 || results.length === 0) {
        results.push({ name: "ctest", passed: false, detail: "no test ran" });
      }
      return results;
    },
  };
}
