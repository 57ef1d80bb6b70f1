// Three servers and two workers on one PostgreSQL database; one of each is killed in the middle. Afterwards every
// acknowledged entry is there once, and every squad that was asked for was planned once.
import { spawn } from "node:child_process";
import { PrivateCluster } from "../cli/private_cluster.mjs";
import { Caller } from "./caller.mjs";
import { all, is, that, wrapUp } from "./expect.mjs";
import { People } from "./people.mjs";
import { pause, Server } from "./server.mjs";

const kClub = "demo/quillmere";
const kHold = 5;  // seconds of silence
const kSenders = 6;

class Workman {
  constructor(program, ledger, where) {
    this.said = "";
    this.child = spawn(program, ["worker", "--ledger", ledger, ...where, "--plan-from", kClub, "--hold", String(kHold)], { stdio: ["ignore", "pipe", "pipe"] });
    this.child.stdout.on("data", (bytes) => (this.said += bytes));
    this.child.stderr.on("data", (bytes) => (this.said += bytes));
    this.ended = new Promise((resolve) => this.child.on("close", (status, signal) => resolve({ status, signal })));
  }

  planned() {
    return [...this.said.matchAll(/"event":"planned","job":(\d+)/g)].map(([, job]) => Number(job));
  }
}

// Sends a batch until somebody acknowledges it, each try to another server, as a phone behind a proxy does.
async function acknowledged(batch, servers, callerTo, from) {
  for (let i = 0; i < 400; i++) {
    const server = servers[(from + i) % servers.length];
    try {
      const answer = await callerTo(server).ask("POST", "/api/sync", { client: 1, most: 0, entries: batch }, {});
      if (answer.status === 200) return answer.json.verdicts.map(({ verdict }) => verdict);
      if (answer.status !== 503 && answer.status !== 429) throw new Error(`${answer.status} ${answer.text}`);
    } catch (error) {
      if (!["ECONNREFUSED", "ECONNRESET", "EPIPE"].includes(error.code) && error.message !== "socket hang up" && error.message !== "aborted") throw error;
    }
    await pause(50);
  }
  throw new Error("nobody acknowledged it");
}

// Everything that this device may see, by id, with how often it came; asked for again where the server had no answer.
export async function everythingOf(caller) {
  const counts = new Map();
  for (let after = 0, more = true; more;) {
    const { status, json } = await caller.ask("POST", "/api/sync", { client: 1, after, most: 500 }, {});
    if (status === 429 || status === 503) {
      await pause(status === 429 ? 1000 : 100);
      continue;
    }
    if (status !== 200) throw new Error(`${status} ${JSON.stringify(json)}`);
    for (const { id } of json.entries) counts.set(id, (counts.get(id) ?? 0) + 1);
    [after, more] = [json.after, json.more];
  }
  return counts;
}

async function threeAndTwo({ demo, contract, long }) {
  const cluster = await PrivateCluster.started();
  try {
    const where = ["--postgres", cluster.newDatabase(), "--club", "quillmere"];
    const folder = demo.file("many");
    const first = await Server.start(demo.program, folder, { flags: ["--demo", "--behind-proxy", ...where] });
    const secrets = demo.secretsIn(folder);
    const servers = [first];
    for (let i = 0; i < 2; i++) servers.push(await Server.start(demo.program, folder, { flags: ["--behind-proxy", ...where] }));
    const workmen = [new Workman(demo.program, folder, where), new Workman(demo.program, folder, where)];
    const people = servers.map((server) => new People({ secrets }, server, contract));
    const lead = await people[0].signIn("lead");
    // Whoever signed in at one server is signed in at all of them.
    const leadAt = servers.map((server) => new Caller(server, contract, { cookie: lead.cookie }));
    const out = [];
    for (const one of leadAt) out.push(is(await one.get("/api/me"), 200));
    const squads = (await leadAt[1].get("/api/squads")).json.squads.map(({ id }) => id).slice(0, long ? 24 : 12);
    out.push(is(await leadAt[2].post("/api/plans", { squads }), 202));

    const callers = new Map(servers.map((server, i) => [server, people[i].device("coach")]));
    const sent = [];
    const batches = long ? 200 : 60;
    const send = async (sender) => {
      for (let i = sender; i < batches; i += kSenders) {
        const batch = Array.from({ length: 5 }, () => wrapUp({ day: `2026-11-${String(1 + (i % 20)).padStart(2, "0")}` }));
        const verdicts = await acknowledged(batch, servers, (server) => callers.get(server), i);
        out.push(that(verdicts.every((one) => one === "stored" || one === "known"), JSON.stringify(verdicts)));
        sent.push(...batch.map(({ id }) => id));
      }
    };
    const sending = Promise.all(Array.from({ length: kSenders }, (_, i) => send(i)));
    const until = async (what, holds) => {
      for (let i = 0; i < 3000; i++) {
        if (await holds()) return "";
        await pause(100);
      }
      return `never: ${what}`;
    };
    const jobs = async () => (await leadAt[2].get("/api/planning")).json.jobs;
    out.push(await until("entries before the kill", () => sent.length >= 20));
    await servers[0].kill();
    out.push(await until("both workers at work", async () => (await jobs()).filter(({ state }) => state === "taken").length === 2 || workmen.every((one) => one.planned().length > 0)));
    workmen[0].child.kill("SIGKILL");
    await sending;
    out.push(await until("everything planned", async () => (await jobs()).every(({ state }) => state === "done")));

    const after = await jobs();
    const counts = await everythingOf(people[1].device("lead"));
    out.push(that(after.length === squads.length, `${after.length} jobs for ${squads.length} squads`));
    out.push(that(sent.length === batches * 5 && sent.every((id) => counts.get(id) === 1), `${sent.filter((id) => counts.get(id) !== 1).length} of ${sent.length} acknowledged entries are lost or doubled`));
    // What was kept is what both told of, each job once; the one who was killed may have kept its last without a word.
    const told = workmen.flatMap((one) => one.planned());
    out.push(that(new Set(told).size === told.length && told.length >= squads.length - 1, `planned: ${told}`));
    for (const squad of squads) {
      const plan = await leadAt[1].get(`/api/squads/${squad}/plan`);
      out.push(is(plan, 200), that(plan.json.plan?.squads[0].squad === squad, plan.text.slice(0, 100)));
    }
    workmen[1].child.kill("SIGTERM");
    const end = await workmen[1].ended;
    out.push(that(end.status === 0 && workmen[1].said.includes("Good night"), workmen[1].said.slice(-300)));
    await Promise.all(servers.slice(1).map((server) => server.stop()));
    const note = `${sent.length} entries by ${kSenders} senders, ${squads.length} squads; told of by the one who was killed: ${workmen[0].planned().length}, by the other: ${workmen[1].planned().length}`;
    return { detail: all(out), note };
  } finally {
    cluster.stop();
  }
}

export const scaleOut = [{ name: "three servers and two workers, one of each killed: nothing lost, nothing doubled", run: threeAndTwo }];
