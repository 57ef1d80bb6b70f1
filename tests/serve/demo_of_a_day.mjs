// The demo as it is at one moment, whatever day it is: the real server with its clock set to that (Debian's faketime), and
// what it says and what its screens show are the same each time.
import { existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Demo, Server } from "./server.mjs";
import { People } from "./people.mjs";

// The one for programs with threads. Debian's wrapper would put a process between the server and whoever ends it.
function library() {
  const found = readdirSync("/usr/lib").map((name) => join("/usr/lib", name, "faketime/libfaketimeMT.so.1")).find(existsSync);
  if (!found) throw new Error("faketime is not installed: ./test installs it");
  return found;
}

export class DemoOfADay {
  // moment: '2026-11-26T17:30:00+01:00'; the server's clock goes on from there. flags: of 'lanework serve'.
  static async open(program, { moment, flags }) {
    const demo = new DemoOfADay();
    demo.root = mkdtempSync(join(tmpdir(), "lanework-day-"));
    const clock = `@${moment.slice(0, 10)} ${moment.slice(11, 19)}`;
    const before = ["env", `LD_PRELOAD=${library()}`, "FAKETIME_DONT_FAKE_MONOTONIC=1", `FAKETIME=${clock}`];
    demo.began = Date.now();
    demo.moment = Date.parse(moment);
    demo.server = await Server.start(program, join(demo.root, "ledger"), { before, flags: ["--demo", ...flags] });
    demo.secrets = Demo.prototype.secretsIn(join(demo.root, "ledger"));
    demo.people = new People(demo, demo.server, undefined, () => demo.now());
    demo.lead = await demo.people.signIn("lead");
    return demo;
  }

  now() {
    return this.moment + Date.now() - this.began;
  }

  async close() {
    await this.server.stop();
    rmSync(this.root, { recursive: true, force: true });
  }
}
