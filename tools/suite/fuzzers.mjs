// The fuzzers, from the kept corpus and a fixed seed, for a stated share of time each. What they find is left in
// build/fuzz/finds for whoever adds it to the corpus.
import { existsSync, mkdirSync, readdirSync } from "node:fs";
import { runProgram, inParallel } from "./programs.mjs";

// Keeps a house from input to input, whose growth is no leak; the replay of its corpus is what looks for those.
const kKeepsAHouse = new Set(["fuzz_http_edge"]);

export function fuzzers(secondsInAll) {
  return {
    name: "fuzz",
    async run() {
      const folder = "build/fuzz/fuzz";
      const names = readdirSync(folder).filter((name) => /^fuzz_\w+$/.test(name) && existsSync(`fuzz/${name}.cpp`));
      if (names.length === 0) return [{ name: "fuzz", passed: false, detail: "no fuzzer was built" }];
      const seconds = Math.max(1, Math.round(secondsInAll / names.length));
      const results = [];
      await inParallel(names.sort(), async (name) => {
        const finds = `build/fuzz/finds/${name}`;
        mkdirSync(finds, { recursive: true });
        const words = existsSync(`fuzz/${name}.dict`) ? [`-dict=fuzz/${name}.dict`] : [];
        const said = await runProgram(`${folder}/${name}`, ["-seed=1", `-max_total_time=${seconds}`, "-timeout=20", "-rss_limit_mb=4096",
          "-print_final_stats=1", ...words, `-detect_leaks=${kKeepsAHouse.has(name) ? 0 : 1}`, `-artifact_prefix=${finds}/`, finds, `fuzz/corpus/${name}`]);
        const runs = /number_of_executed_units:\s*(\d+)/.exec(said.output)?.[1] ?? "0";
        results.push({ name: `${name} for ${seconds} s`, passed: said.status === 0 && Number(runs) > 0,
          detail: said.output.slice(-3000), note: `${runs} inputs` });
      });
      return results;
    },
  };
}
