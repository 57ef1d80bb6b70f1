// What the lead asks to have planned, what workers make of it, and who reads it.
import { spawn, spawnSync } from "node:child_process";
import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { all, entry, is, that } from "./expect.mjs";
import { People } from "./people.mjs";
import { pause, Server } from "./server.mjs";

const kClub = "demo/quillmere";

// Words of the command line for a worker that ends when nothing is left to do.
function workOnce(program, ledger, from = kClub, more = []) {
  return spawnSync(program, ["worker", "--ledger", ledger, "--plan-from", from, "--once", ...more], { encoding: "utf8", env: { ...process.env, TZ: "Europe/Berlin" } });
}

// The door's answer, by the program that the tests of parity ask too.
function throughTheDoor(demo, request) {
  const file = demo.file("request.json");
  writeFileSync(file, JSON.stringify(request));
  const said = spawnSync(join(dirname(demo.program), "tests/parity/native_door"), [file], { encoding: "utf8" });
  return said.status === 0 ? JSON.parse(readFileSync(`${file}.answer`, "utf8")) : { answer: said.stderr };
}

async function askedPlannedAndRead({ demo, server, people, lead }) {
  const [coach, operator, board] = [await people.signIn("coach"), await people.signIn("operator"), await people.signIn("board")];
  const phone = people.device("coach");
  const nothing = await lead.get("/api/squads/u13-kestrels/plan");
  const out = [is(nothing, 200), that(nothing.json.squad === "u13-kestrels" && nothing.json.plan === undefined, nothing.text)];
  const asked = await lead.post("/api/plans", { squads: ["u13-kestrels", "u13-kestrels"] });
  const again = await lead.post("/api/plans", { squads: ["u13-kestrels"] });
  out.push(is(asked, 202), that(asked.json.jobs.length === 1 && again.json.jobs[0].number === asked.json.jobs[0].number, `${asked.text} ${again.text}`));
  for (const body of [{ squads: ["u99-none"] }, { squads: "u13-kestrels" }, { squads: [7] }, { squad: "u13-kestrels" }, { squads: ["'); DROP TABLE planning_job;--"] }]) {
    out.push(is(await lead.post("/api/plans", body), 400, "not-understood"));
  }
  out.push(is(await coach.post("/api/plans", { squads: ["u13-kestrels"] }), 403, "not-your-role"), is(await coach.get("/api/planning"), 403, "not-your-role"));
  const waiting = (await lead.get("/api/planning")).json.jobs;
  out.push(that(waiting.length === 1 && waiting[0].state === "waiting", JSON.stringify(waiting)));
  const worked = workOnce(demo.program, server.folder);
  out.push(that(worked.status === 0 && worked.stdout.includes("1 planned"), worked.stdout + worked.stderr));
  const done = (await operator.get("/api/planning")).json.jobs;
  out.push(that(done[0].state === "done" && done[0].ended !== undefined, JSON.stringify(done)));
  const plans = [await lead.get("/api/squads/u13-kestrels/plan"), await coach.get("/api/squads/u13-kestrels/plan"), await phone.get("/api/device/squads/u13-kestrels/plan")];
  for (const plan of plans) out.push(is(plan, 200), that(plan.text === plans[0].text && plan.json.plan.squads[0].squad === "u13-kestrels", plan.text.slice(0, 200)));
  out.push(that(plans[0].json.as_of > 0, "the plan knows nothing of the ledger"));
  out.push(is(await coach.get("/api/squads/u12-dunnocks/plan"), 404, "not-found"), is(await phone.get("/api/device/squads/u12-dunnocks/plan"), 404, "not-found"), is(await board.get("/api/squads/u13-kestrels/plan"), 404, "not-found"));
  out.push(is(await coach.call("HEAD", "/api/squads/u13-kestrels/plan"), 200), is(await lead.get("/api/squads/u99-none/plan"), 404, "not-found"));
  const everyone = await lead.post("/api/plans");
  out.push(is(everyone, 202), that(everyone.json.jobs.length === 24, `${everyone.json.jobs?.length} squads`));
  return all(out);
}

// What is wrong in the folder when a job is taken the lead sees with its place; whoever runs the machine sees that it failed.
async function whatCannotBePlanned({ demo, server, people, lead }) {
  const folder = demo.file("club");
  cpSync(kClub, folder, { recursive: true });
  const worker = spawn(demo.program, ["worker", "--ledger", server.folder, "--plan-from", folder], { stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  worker.stdout.on("data", (bytes) => (said += bytes));
  worker.stderr.on("data", (bytes) => (said += bytes));
  const ended = new Promise((resolve) => worker.on("close", resolve));
  for (let i = 0; i < 300 && !said.includes("is waiting"); i++) await pause(50);
  writeFileSync(join(folder, "club.toml"), `${readFileSync(join(folder, "club.toml"), "utf8")}\n[canary_tamsin]\n`);
  await lead.post("/api/plans", { squads: ["u13-kestrels"] });
  let job;
  for (let i = 0; i < 300 && job?.state !== "failed"; i++) {
    await pause(100);
    [job] = (await lead.get("/api/planning")).json.jobs;
  }
  const [theirs] = (await (await people.signIn("operator")).get("/api/planning")).json.jobs;
  worker.kill("SIGTERM");
  const status = await ended;
  rmSync(join(folder, "club.toml"));
  const wrong = workOnce(demo.program, server.folder, folder);
  const nowhere = workOnce(demo.program, demo.file("no-ledger"));
  return all(that(job.state === "failed" && job.why.includes("canary_tamsin"), JSON.stringify(job)), that(theirs.state === "failed" && theirs.why === undefined, JSON.stringify(theirs)),
    that(status === 0 && said.includes('"event":"failed"') && !said.includes(folder) && !/canary/i.test(said), `${status} ${said}`),
    that(wrong.status === 2 && wrong.stderr.includes("club.toml") && wrong.stdout === "", wrong.stderr), that(nowhere.status === 2 && nowhere.stderr.includes("no ledger"), nowhere.stderr));
}

// A server that plans by itself; and what a coach enters is in the plan that is made next.
async function besideTheServer({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", kClub] });
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const planned = async () => {
    await lead.post("/api/plans", { squads: ["u13-kestrels"] });
    for (let i = 0; i < 600; i++) {
      const [job] = (await lead.get("/api/planning")).json.jobs;
      if (job.state === "done" || job.state === "failed") return job;
      await pause(200);
    }
    return { state: "never" };
  };
  const first = await planned();
  const before = await lead.get("/api/squads/u13-kestrels/plan");
  const out = [that(first.state === "done", JSON.stringify(first))];
  const restricted = await people.device("lead").post("/api/sync", { client: 1, most: 0, entries: [entry("restriction", { player: "Q07", sits_out: true, instruction: "sits out" })] });
  out.push(that(restricted.json.verdicts[0].verdict === "stored", restricted.text));
  const second = await planned();
  const after = await lead.get("/api/squads/u13-kestrels/plan");
  const turnout = (answer) => answer.json.plan.squads[0].sessions.at(-1).turnout;
  out.push(that(second.state === "done", JSON.stringify(second)), that(after.json.as_of > before.json.as_of, `${after.json.as_of}`), that(turnout(after) === turnout(before) - 1, `${turnout(after)} of ${turnout(before)} turn out`));
  await server.stop();
  out.push(that(server.log.includes('"event":"planned"') && !server.log.includes("Q07"), server.log.slice(-500)));
  return all(out);
}

// What a phone is given of a squad's coming evenings is planned by the same engine, without a word of what is measured or why.
async function coming({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy", "--plan-from", kClub] });
  const people = new People(demo, server, contract);
  const [lead, phone] = [await people.signIn("lead"), people.device("coach")];
  const where = "/api/device/squads/u13-kestrels/evenings";
  const before = await phone.get(where);
  const out = [is(before, 200), that(before.json.version === 1 && before.json.evenings.length > 0, before.text.slice(0, 300))];
  const days = (Date.parse(before.json.lease_until) - Date.parse(before.json.made)) / 86400000;
  out.push(that(Math.abs(days - 7) < 0.05, `a lease of ${days} days`));
  out.push(is(await phone.get("/api/device/squads/u12-dunnocks/evenings"), 404, "not-found"));
  const restricted = await people.device("lead").post("/api/sync", { client: 1, most: 0, entries: [entry("restriction", { player: "Q07", areas: ["shoulder"], kinds: ["load"], instruction: "no holds" })] });
  out.push(that(restricted.json.verdicts[0].verdict === "stored", restricted.text));
  const { catalogue, ...after } = (await phone.get(where)).json;
  const text = JSON.stringify(after);
  out.push(that(after.evenings.every(({ documents }) => documents.permissions.permission.some((one) => one.player === "Q07" && one.instruction === "no holds" && one.bars.length > 0)), "what was entered is no permission"));
  for (const word of ["birth", "size_group", "size-group", "body_mass", "forbidden", "areas", '"kinds"', "allowed", '"shoulder"', kClub]) out.push(that(!text.includes(word), `the phone was told '${word}'`));
  const [first] = after.evenings;
  for (const request of ["plan", "slip"]) {
    const answer = throughTheDoor(demo, { request, catalogue, ...first.documents });
    out.push(that(answer.answer === request, JSON.stringify(answer).slice(0, 300)));
  }
  const reads = (await lead.get("/api/reads")).text;
  out.push(that(reads.includes("u13-kestrels"), "the book of reads has nothing of it"));
  await server.stop();
  const without = await demo.serve({ flags: ["--behind-proxy"] });
  out.push(is(await new People(demo, without, contract).device("coach").get(where), 404, "not-found"));
  await without.stop();
  return all(out);
}

export const withLead = (work) => async ({ demo, contract }) => {
  const server = await demo.serve({ flags: ["--behind-proxy"], mayRestart: true });
  const people = new People(demo, server, contract);
  const said = await work({ demo, contract, server, people, lead: await people.signIn("lead") });
  await server.stop();
  return said;
};

export const planning = [
  { name: "routes: plans are asked for, made and read", run: withLead(askedPlannedAndRead) },
  { name: "routes: what cannot be planned", run: withLead(whatCannotBePlanned) },
  { name: "planning: a server plans by itself, from what was entered", run: besideTheServer },
  { name: "planning: what a phone is given of the coming evenings", run: coming },
];
