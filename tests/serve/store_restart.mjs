// PostgreSQL is restarted under two servers while phones hand in what happened. Whoever asks meanwhile is told so in words
// and sends it again; the servers find the database by themselves, and what was acknowledged is there once.
import { spawnSync } from "node:child_process";
import { PrivateCluster } from "../cli/private_cluster.mjs";
import { all, is, that, wrapUp } from "./expect.mjs";
import { People } from "./people.mjs";
import { pause, Server } from "./server.mjs";
import { everythingOf } from "./scale_out.mjs";

const kSenders = 6;
const kBetweenBatchesMilliseconds = 60;  // within a device's pace
const kSlowestAnswerMilliseconds = 15000;
const kReadyAgainMilliseconds = 10000;

// A phone that sends a batch after the other, each until it is acknowledged, at one server and the other by turns.
class Phone {
  constructor(callers) {
    this.callers = callers;
    this.acknowledged = [];
    this.refusals = 0;  // 503 with words
    this.known = 0;     // taken in, though the answer to it was none
    this.slowest = 0;   // milliseconds
    this.wrong = [];
  }

  async send(over) {
    for (let i = 0; !over(); i++) {
      const batch = Array.from({ length: 4 }, () => wrapUp({ day: `2026-11-${String(1 + (i % 20)).padStart(2, "0")}` }));
      if (!await this.handIn(batch, i)) return;
      await pause(kBetweenBatchesMilliseconds);
    }
  }

  async handIn(batch, from) {
    for (let i = 0; i < 600; i++) {
      const began = Date.now();
      // A connection that the server cuts is thrown here: nobody restarted the server, so it is a fault.
      const answer = await this.callers[(from + i) % this.callers.length].ask("POST", "/api/sync", { client: 1, most: 0, entries: batch }, {});
      this.slowest = Math.max(this.slowest, Date.now() - began);
      if (answer.status === 200) {
        const verdicts = answer.json.verdicts.map(({ verdict }) => verdict);
        if (!verdicts.every((one) => one === "stored" || one === "known")) this.wrong.push(`verdicts ${verdicts}`);
        this.known += verdicts.filter((one) => one === "known").length;
        this.acknowledged.push(...batch.map(({ id }) => id));
        return true;
      }
      if (answer.status === 503) {
        this.refusals++;
        if (answer.json?.error !== "store-busy" || !answer.json.what || !answer.headers["retry-after"]) this.wrong.push(`503 without words: ${answer.text}`);
      } else if (answer.status !== 429) {
        this.wrong.push(`${answer.status} ${answer.text.slice(0, 200)}`);
        return false;
      }
      await pause(40);
    }
    this.wrong.push("nobody acknowledged it");
    return false;
  }
}

async function readyAgain(nobodies) {
  const until = Date.now() + kReadyAgainMilliseconds;
  for (;;) {
    const answers = await Promise.all(nobodies.map((nobody) => nobody.get("/ready")));
    if (answers.every(({ status }) => status === 200)) return "";
    const odd = answers.find(({ status, json }) => status !== 200 && !(status === 503 && json?.what));
    if (odd) return `${odd.status} ${odd.text.slice(0, 200)}`;
    if (Date.now() > until) return `not ready: ${answers.map(({ status }) => status)}`;
    await pause(50);
  }
}

async function restarted({ demo, contract, long }) {
  const cluster = await PrivateCluster.started();
  try {
    const where = ["--postgres", cluster.newDatabase(), "--club", "quillmere"];
    const folder = demo.file("restarted");
    const servers = [await Server.start(demo.program, folder, { flags: ["--demo", "--behind-proxy", ...where] })];
    servers.push(await Server.start(demo.program, folder, { flags: ["--behind-proxy", ...where] }));
    const processes = servers.map(({ child }) => child.pid);
    const people = servers.map((server) => new People({ secrets: demo.secretsIn(folder) }, server, contract));
    const nobodies = people.map((one) => one.nobody());
    const phones = Array.from({ length: kSenders }, (_, i) => new Phone(people.map((one) => one.device(i % 2 ? "lead" : "coach"))));
    let over = false;
    const sending = Promise.all(phones.map((phone) => phone.send(() => over)));
    const sum = (of) => phones.reduce((before, phone) => before + of(phone), 0);
    const sent = () => sum((phone) => phone.acknowledged.length);
    const out = [];
    for (const mode of long ? ["fast", "immediate", "fast", "immediate", "fast", "immediate", "immediate", "fast"] : ["fast", "immediate"]) {
      const before = sent();
      for (let i = 0; i < 200 && sent() < before + 40; i++) await pause(25);
      out.push(that(sent() >= before + 40, `${sent() - before} entries in five seconds before the restart (${mode})`));
      await cluster.restart(mode);
      out.push(await readyAgain(nobodies));
    }
    const before = sent();
    for (let i = 0; i < 200 && sent() < before + 40; i++) await pause(25);
    over = true;
    await sending;
    out.push(...phones.flatMap(({ wrong }) => wrong));
    out.push(that(servers.every(({ over: ended, child }, i) => !ended && child.pid === processes[i]), "a server ended"));
    // Without a refusal nothing of all this was tried.
    out.push(that(sum(({ refusals }) => refusals) > 0, "nobody was refused while the database was away"));
    const slowest = Math.max(...phones.map((phone) => phone.slowest));
    out.push(that(slowest < kSlowestAnswerMilliseconds, `somebody waited ${slowest} ms for an answer`));
    for (const one of nobodies) out.push(is(await one.get("/ready"), 200));

    const ids = phones.flatMap(({ acknowledged }) => acknowledged);
    for (const one of people) {
      const counts = await everythingOf(one.device("lead"));
      const wrong = ids.filter((id) => counts.get(id) !== 1).length;
      out.push(that(wrong === 0, `${wrong} of ${ids.length} acknowledged entries are lost or doubled`));
    }
    await Promise.all(servers.map((server) => server.stop()));
    const books = spawnSync(demo.program, ["ledger", "check", "--ledger", folder, ...where], { encoding: "utf8" });
    out.push(that(books.status === 0, `ledger check: ${books.status} ${books.stdout}${books.stderr}`));
    const note = `${ids.length} entries acknowledged by two servers, ${sum(({ refusals }) => refusals)} refusals, ${sum(({ known }) => known)} entries known when sent again; longest answer ${slowest} ms`;
    return { detail: all(out), note };
  } finally {
    cluster.stop();
  }
}

export const storeRestarts = [{ name: "PostgreSQL restarted twice under two servers: nothing lost, nothing doubled, and they find it by themselves", run: restarted }];
