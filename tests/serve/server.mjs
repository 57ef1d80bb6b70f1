// The real program as a server on a free port, over a ledger of its own in a temporary folder.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

const kStartMilliseconds = 30000;
const running = new Set();

export class Server {
  // command: in place of the program itself, where something must be around it; it gets the program's words.
  static async start(program, folder, { flags = [], before = [], mayRestart = false } = {}) {
    const server = new Server();
    server.folder = folder;
    server.mayRestart = mayRestart;
    server.secure = flags.includes("--behind-proxy") || flags.includes("--tls-key");
    server.words = [...before, program, "serve", "--ledger", folder, "--port", "0", ...flags];
    server.log = "";
    await server.open();
    return server;
  }

  async open() {
    const [command, ...words] = this.words;
    const child = spawn(command, words, { env: { ...process.env, TZ: "Europe/Berlin" }, stdio: ["pipe", "pipe", "pipe"] });
    this.child = child;
    this.over = false;
    this.said = "";
    running.add(this);
    child.stdout.on("data", (bytes) => (this.said += bytes));
    child.stderr.on("data", (bytes) => (this.log += bytes));
    this.ended = new Promise((resolve) => child.on("close", (status, signal) => {
      running.delete(this);
      this.over = true;
      resolve({ status, signal });
    }));
    const until = Date.now() + kStartMilliseconds;
    while (!this.over && Date.now() < until) {
      const found = /Lanework is at (https?):\/\/[^/]+?:(\d+)/.exec(this.said);
      if (found) {
        this.port = Number(found[2]);
        this.tls = found[1] === "https";
        return;
      }
      await pause(5);
    }
    await this.kill();
    throw new Error(`no server: ${this.said}${this.log}`);
  }

  // The pace of accounts and devices begins anew; whoever is signed in stays so.
  async restart() {
    await this.stop();
    await this.open();
  }

  async stop() {
    if (!this.over) this.child.kill("SIGTERM");
    return this.ended;
  }

  async kill() {
    if (!this.over) this.child.kill("SIGKILL");
    return this.ended;
  }

  lines() {
    return this.log.split("\n").filter((line) => line !== "");
  }

  residentMebibytes() {
    const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${this.child.pid}/status`, "utf8"));
    return Number(found[1]) / 1024;
  }
}

export async function killAll() {
  await Promise.all([...running].map((server) => server.kill()));
}

// The demo's ledger, made once; every test has a copy.
export class Demo {
  static async make(program) {
    const demo = new Demo();
    demo.program = program;
    demo.root = mkdtempSync(join(tmpdir(), "lanework-serve-"));
    demo.first = join(demo.root, "first");
    const server = await Server.start(program, demo.first, { flags: ["--demo"] });
    await server.stop();
    demo.secrets = demo.secretsIn(demo.first);
    demo.copies = 0;
    return demo;
  }

  secretsIn(folder) {
    const lines = readFileSync(join(folder, "demo.env"), "utf8").trim().split("\n");
    return Object.fromEntries(lines.map((line) => [line.slice(0, line.indexOf("=")), line.slice(line.indexOf("=") + 1)]));
  }

  folder() {
    const out = join(this.root, `copy-${++this.copies}`);
    cpSync(this.first, out, { recursive: true, preserveTimestamps: true });
    return out;
  }

  file(name) {
    return join(this.root, `${++this.copies}-${name}`);
  }

  async serve(options) {
    return Server.start(this.program, options?.folder ?? this.folder(), options);
  }

  remove() {
    rmSync(this.root, { recursive: true, force: true });
  }
}
