// What runs in a browser is typed as strictly as web/tsconfig.json says; a warning is a fault.
import { fileURLToPath } from "node:url";
import { runProgram } from "../suite/programs.mjs";

const kCompiler = fileURLToPath(new URL("../../node_modules/typescript/bin/tsc", import.meta.url));

export default {
  name: "lint-types",
  async run() {
    const said = await runProgram(process.execPath, [kCompiler, "--pretty", "false", "-p", "web/tsconfig.json"]);
    if (said.status === 0) return [];
    return said.output.split("\n").filter((line) => line.trim() !== "");
  },
};
