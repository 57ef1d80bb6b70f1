// Where the repository, the program and the module of the door are: --program and --module, else the usual build.
import { existsSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";

export const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");

function given(flag, usual) {
  const at = process.argv.indexOf(flag);
  const place = at >= 0 ? process.argv[at + 1] : resolve(root, usual);
  if (!place || !existsSync(place)) throw new Error(`${flag}: ${place} is not there; build it first`);
  return place;
}

export const program = () => given("--program", "build/test/lanework");
export const wasmModule = () => given("--module", "build/wasm/lanework.wasm");
