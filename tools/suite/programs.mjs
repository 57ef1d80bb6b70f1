// Running other programs: their status and everything they said, several at a time.
import { spawn } from "node:child_process";
import { cpus } from "node:os";

// Fonts are kept by their libraries until the end; the sanitizers' leak check is told so for every program run.
process.env.LSAN_OPTIONS ??= `suppressions=${process.cwd()}/tools/suite/leaks_of_libraries.txt:print_suppressions=0`;

export function runProgram(command, words, { environment = {}, input } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, words, { env: { ...process.env, ...environment }, stdio: ["pipe", "pipe", "pipe"] });
    const said = [];
    const kept = [];
    child.stdout.on("data", (bytes) => { said.push(bytes); kept.push(bytes); });
    child.stderr.on("data", (bytes) => said.push(bytes));
    child.on("error", (error) => resolve({ status: 127, output: `${command}: ${error.message}`, answer: "" }));
    child.on("close", (status, signal) => resolve({
      status: status ?? 128,
      output: Buffer.concat(said).toString("utf8") + (signal ? `\nended by ${signal}` : ""),
      answer: Buffer.concat(kept).toString("utf8"),
    }));
    child.stdin.on("error", () => {});
    child.stdin.end(input);
  });
}

export async function inParallel(items, work, width = cpus().length) {
  const queue = [...items];
  const worker = async () => {
    while (queue.length > 0) await work(queue.shift());
  };
  await Promise.all(Array.from({ length: width }, worker));
}
