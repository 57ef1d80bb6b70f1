// A ledger of its own for a test, run as a user would; and the few questions that its tests ask of an answer.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";

export const all = (...checks) => checks.find((check) => check !== "") ?? "";
export const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.stderr}${said.stdout.slice(0, 600)}`);
export const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text.slice(0, 1500)}`);
export const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text.slice(0, 1500)}` : "");

export const id = (n) => `019b1c2e-7d40-7a31-8c55-${String(n).padStart(12, "0")}`;
export const entry = (n, kind, fields) => ({ id: id(n), sequence: n, device_time: "2026-11-26T18:04:10+01:00", kind, ...fields });
export const kSession = { squad: "u13-kestrels", day: "2026-11-26", start: "18:00" };

export const kEvening = [
  entry(1, "session-started", kSession),
  entry(2, "drill-marked", { ...kSession, drill: "side-plank", mark: "easier" }),
  entry(3, "attendance", { ...kSession, there: 14 }),
  entry(4, "hurt", { player: "Q07", place: "knee" }),
  entry(5, "wrap-up", { ...kSession, happened: "held", did_it: "most" }),
];

export class Ledger {
  where = [];  // flags of a PostgreSQL database, where it lies in one

  constructor(program) {
    this.program = program;
    this.root = mkdtempSync(join(tmpdir(), "lanework-ledger-"));
    this.folder = join(this.root, "books");
  }
  path(name) {
    return join(this.root, name);
  }
  run(...words) {
    return spawnSync(this.program, words, { encoding: "utf8", env: { ...process.env, TZ: "Europe/Berlin" } });
  }
  ledger(name, ...words) {
    return this.run("ledger", name, "--ledger", this.folder, ...this.where, ...words);
  }
  add(entries, ...words) {
    const file = this.path("batch.json");
    writeFileSync(file, typeof entries === "string" ? entries : JSON.stringify({ entries }));
    return this.ledger("add", file, "--device", "phone-1", "--author", "ann", "--received", "2026-11-26T18:05:00+01:00", ...words);
  }
  state() {
    return JSON.parse(this.ledger("state", "--json").stdout);
  }
  remove() {
    rmSync(this.root, { recursive: true, force: true });
  }
}

export const withLedger = (name, work) => ({
  name: `ledger: ${name}`,
  run(program) {
    const ledger = new Ledger(program);
    try {
      return all(status(ledger.ledger("new"), 0), work(ledger) ?? "");
    } finally {
      ledger.remove();
    }
  },
});
