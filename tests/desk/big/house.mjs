// The server of a club with a hundred squads and five seasons in its ledger: made once, by the program's own commands.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pause, Server } from "../../serve/server.mjs";
import { People } from "../../serve/people.mjs";
import { bigClub } from "./club.mjs";
import { seasonsOf } from "./seasons.mjs";

const kMostInBatch = 500; // of 'lanework ledger add'
const kPlannedWithinMilliseconds = 600_000;
const kKeepDays = 2500; // so that five seasons stay

function told(program, words) {
  const said = spawnSync(program, words, { encoding: "utf8", env: { ...process.env, TZ: "Europe/Berlin" } });
  if (said.status !== 0) throw new Error(`lanework ${words.slice(0, 3).join(" ")}: ${said.status}\n${said.stderr}${said.stdout.slice(-600)}`);
  return said.stdout;
}

function addSeasons(program, ledger, squads, { seasons, today, root }) {
  // The demo's own autumn stands in the ledger already.
  const autumn = /from = (\d{4}-\d\d-\d\d)/.exec(readFileSync("demo/quillmere/club.toml", "utf8"))[1];
  const file = join(root, "batch.json");
  let count = 0;
  for (const { role, received, entries } of seasonsOf(squads, { seasons, today, told: (squad, day) => squad.own && day >= autumn })) {
    for (let at = 0; at < entries.length; at += kMostInBatch) {
      writeFileSync(file, JSON.stringify({ entries: entries.slice(at, at + kMostInBatch) }));
      told(program, ["ledger", "add", file, "--ledger", ledger, "--device", `big-${role}`, "--author", `big-${role}`, "--role", role, "--received", received]);
    }
    count += entries.length;
  }
  return count;
}

async function allPlanned(caller) {
  await caller.post("/api/plans", {});
  for (const until = Date.now() + kPlannedWithinMilliseconds; Date.now() < until; await pause(3000)) {
    const { jobs } = (await caller.get("/api/planning")).json;
    const failed = jobs.find(({ state }) => state === "failed");
    if (failed) throw new Error(`${failed.squad} was not planned: ${failed.why}`);
    if (jobs.every(({ state }) => state === "done")) return;
  }
  throw new Error("the plans are not made in ten minutes");
}

export class BigHouse {
  // root: a folder for all of it; where it is there already it is served as it is.
  static async open(program, { root, web, squads = 100, seasons = 5, tell = () => {} }) {
    const house = new BigHouse();
    const ledger = join(root, "ledger");
    const club = join(root, "club");
    const today = new Intl.DateTimeFormat("sv", { timeZone: "Europe/Berlin" }).format(new Date());
    const ready = existsSync(join(root, "made.json"));
    if (!ready) {
      rmSync(root, { recursive: true, force: true });
      mkdirSync(root, { recursive: true });
      const first = await Server.start(program, ledger, { flags: ["--demo"] });
      await first.stop();
      const made = bigClub(club, { squads, day: today });
      told(program, ["import", "--ledger", ledger, club]);
      for (const squad of made.filter(({ own }) => !own)) told(program, ["account", "add", "--ledger", ledger, "--sign-in", `coach-${squad.id}`, "--name", `Coach of ${squad.id}`, "--role", "coach", "--squad", squad.id]);
      tell("the club is there; its seasons are entered");
      const entries = addSeasons(program, ledger, made, { seasons, today, root });
      tell(`${entries} entries are in; its blocks are planned`);
      house.entries = entries;
    }
    const lines = readFileSync(join(ledger, "demo.env"), "utf8").trim().split("\n");
    const secrets = Object.fromEntries(lines.map((line) => [line.slice(0, line.indexOf("=")), line.slice(line.indexOf("=") + 1)]));
    house.server = await Server.start(program, ledger, { flags: ["--plan-from", club, "--web", web, "--keep-evenings-days", String(kKeepDays)], mayRestart: true });
    house.people = new People({ secrets }, house.server, undefined);
    house.lead = await house.people.signIn("lead");
    if (ready) house.entries = JSON.parse(readFileSync(join(root, "made.json"), "utf8")).entries;
    else {
      await allPlanned(house.lead);
      writeFileSync(join(root, "made.json"), JSON.stringify({ squads, seasons, entries: house.entries }));
    }
    return house;
  }

  close() {
    return this.server.stop();
  }
}
