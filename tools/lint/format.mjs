// clang-format would change nothing.
import { sources } from "../tracked_files.mjs";
import { runProgram } from "../suite/programs.mjs";

export default {
  name: "lint-format",
  async run() {
    const said = await runProgram("clang-format", ["--dry-run", "-Werror", ...sources()]);
    if (said.status === 0) return [];
    const faults = said.output.split("\n").filter((line) => line.includes("error:"));
    const files = new Set(faults.map((line) => line.split(":")[0]));
    return files.size > 0 ? [...files].map((file) => `${file}: clang-format -i changes it`) : [said.output];
  },
};
