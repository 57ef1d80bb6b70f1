// What devices hand in, under everything that goes wrong on the way: repeated, lost, cut off, poisoned, forged, from the
// wrong clock, from a revoked device, with the disk full or the database held, and with the server killed.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { all, entry, entryId, is, kDay, that, wrapUp } from "./expect.mjs";
import { pair } from "./every_route.mjs";
import { Authenticator } from "../../tools/authenticator.mjs";
import { People } from "./people.mjs";
import { pause, Server } from "./server.mjs";
import { Raw } from "./raw.mjs";

export function ledger(demo, folder, ...words) {
  const said = spawnSync(demo.program, ["ledger", ...words, "--ledger", folder], { encoding: "utf8", maxBuffer: 1 << 28, env: { ...process.env, TZ: "Europe/Berlin" } });
  if (said.status !== 0) throw new Error(`ledger ${words}: ${said.status} ${said.stderr}`);
  return said.stdout;
}

export const stateOf = (demo, folder) => createHash("sha256").update(ledger(demo, folder, "state", "--json")).digest("hex");

const verdicts = (answer) => answer.json.verdicts.map(({ verdict }) => verdict);
const send = (caller, entries, more = {}) => caller.post("/api/sync", { client: 1, most: 0, entries, ...more });

// Everything that a device may see, by id, with how often it came.
async function everything(caller) {
  const out = new Map();
  let after = 0;
  for (let more = true; more;) {
    const { json } = await caller.post("/api/sync", { client: 1, after });
    for (const one of json.entries) out.set(one.id, [...out.get(one.id) ?? [], one]);
    ({ after, more } = json);
  }
  return out;
}

const withServer = (name, work, waits = false) => ({
  name: `sync: ${name}`,
  waits,
  async run({ demo, contract, long }) {
    const server = await demo.serve({ flags: ["--behind-proxy"] });
    const people = new People(demo, server, contract);
    const said = await work({ demo, contract, long, server, people, coach: people.device("coach"), lead: people.device("lead") });
    await server.stop();
    return said;
  },
});

const evening = (count, start = "18:00") => Array.from({ length: count }, (_, index) => entry("drill-marked", { squad: "u13-kestrels", day: kDay, start, drill: `drill-${index}`, mark: "done" }));

async function repeated({ demo, server, coach }) {
  const batch = [...evening(20), wrapUp(), entry("hurt", { player: "Q03", place: "knee" })];
  const first = await send(coach, batch);
  const state = stateOf(demo, server.folder);
  const numbers = JSON.stringify(first.json.verdicts.map(({ receipt }) => receipt));
  const out = [that(verdicts(first).every((one) => one === "stored"), first.text)];
  const again = [];
  for (let i = 0; i < 9; i++) again.push(await send(coach, batch));
  again.push(...await Promise.all(Array.from({ length: 10 }, () => send(coach.as({ device: coach.device }), batch))));
  for (const answer of again) out.push(that(verdicts(answer).every((one) => one === "known") && JSON.stringify(answer.json.verdicts.map(({ receipt }) => receipt)) === numbers, answer.text.slice(0, 300)));
  // New ones ten times at once: whichever came first, it is one set.
  const fresh = evening(20, "19:00");
  const raced = await Promise.all(Array.from({ length: 10 }, () => send(coach.as({ device: coach.device }), fresh)));
  const stored = raced.flatMap(verdicts).filter((one) => one === "stored").length;
  const receipts = new Set(raced.map((answer) => JSON.stringify(answer.json.verdicts.map(({ receipt }) => receipt))));
  const seen = await everything(coach);
  return all(out, that(stored === 20 && receipts.size === 1, `${stored} stored, ${receipts.size} sets of numbers`), that([...batch.slice(0, 21), ...fresh].every(({ id }) => seen.get(id)?.length === 1), "not each once"),
    that(stateOf(demo, server.folder) !== state, "the state knows nothing of the second evening"));
}

async function lostReplies({ demo, server, coach, long }) {
  const batch = evening(10);
  const body = JSON.stringify({ client: 1, most: 0, entries: batch });
  const bytes = `POST /api/sync HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nLanework-Request: 1\r\nAuthorization: Bearer ${coach.device}\r\nContent-Length: ${body.length}\r\n\r\n${body}`;
  const before = stateOf(demo, server.folder);
  for (let cut = 1; cut < bytes.length - 1; cut += long ? 3 : 97) {
    const raw = await Raw.open(server);
    raw.socket.on("error", () => {});
    await raw.send(bytes.slice(0, cut));
    raw.destroy();
  }
  await pause(150);
  const out = [that(stateOf(demo, server.folder) === before, "something of a request that was cut off was taken in")];
  const lost = await Raw.open(server);
  lost.socket.on("error", () => {});
  await lost.send(bytes);
  lost.destroy();
  await pause(300);
  const again = await send(coach, batch);
  out.push(that(verdicts(again).every((one) => one === "known"), `after the lost reply: ${verdicts(again)}`));
  const seen = await everything(coach);
  return all(out, that(batch.every(({ id }) => seen.get(id)?.length === 1), "not each once"));
}

async function poisoned({ people, coach }) {
  const batch = evening(50);
  batch[36] = { ...batch[36], mark: 7 };
  const answer = await send(coach, batch);
  const out = [is(answer, 200), that(verdicts(answer).filter((one) => one === "stored").length === 49 && verdicts(answer)[36] === "kept-aside", verdicts(answer).join())];
  out.push(that(/mark: expected/.test(answer.json.verdicts[36].why), answer.json.verdicts[36].why));
  const other = { ...batch[3], mark: "skipped" };
  const changed = await send(coach, [other]);
  out.push(that(verdicts(changed)[0] === "other-content", changed.text));
  const seen = await everything(coach);
  out.push(that(seen.get(batch[3].id)?.[0].mark === "done", "the first does not stand"), that(!seen.has(batch[36].id), "what was kept aside was given out"));
  const kept = (await (await people.signIn("lead")).get("/api/quarantine")).json.kept_aside;
  const row = kept.find(({ content }) => content.includes(batch[36].id));
  return all(out, that(row !== undefined && /mark: expected/.test(row.why), JSON.stringify(row ?? kept)));
}

const kYears = 3 * 365.25 * 86400e3;
const stamp = (milliseconds) => new Date(Date.now() + milliseconds).toISOString();

async function keptAside({ people, coach, lead }) {
  const cases = [
    [coach, entry("wrap-up", { squad: "u12-dunnocks", day: kDay, start: "18:00", happened: "held" }), "about a squad that the sender was not charged with"],
    [coach, entry("wrap-up", { squad: "no-such-squad", day: kDay, start: "18:00", happened: "held" }), "about a squad that the sender was not charged with"],
    [coach, entry("hurt", { player: "D01" }), "about "],
    [coach, entry("hurt", { player: "Q99" }), "about nobody on the club's lists"],
    [lead, entry("hurt", { player: "Q99" }), "about nobody on the club's lists"],
    [coach, { ...wrapUp(), device_time: stamp(kYears) }, "the device's clock is ahead of the server's"],
    [lead, { ...wrapUp(), device_time: stamp(kYears) }, "the device's clock is ahead of the server's"],
    [coach, { ...wrapUp(), device_time: stamp(-kYears) }, "more than 14 days old by the device's clock"],
    [lead, { ...wrapUp(), device_time: stamp(-kYears) }, undefined],
    [coach, { ...wrapUp(), device_time: stamp(4 * 60e3) }, undefined],
    [coach, { ...wrapUp(), device_time: stamp(6 * 60e3) }, "the device's clock is ahead of the server's"],
    [coach, { ...wrapUp(), day: "2099-01-01" }, "about a day that has not come"],
    [coach, entry("lifted", { player: "Q03", names: [entryId()] }), "a coach does not enter lifted"],
    [coach, { ...wrapUp(), id: entryId().replace(/^(.{14})7/, "$14") }, "id: expected"],
    [coach, { ...wrapUp(), sequence: 0 }, "sequence: expected"],
    [coach, { ...wrapUp(), device_time: "yesterday" }, "device_time: expected"],
    [coach, { ...wrapUp(), note: "x".repeat(501) }, "note: expected"],
    [coach, { ...wrapUp(), note: "x".repeat(400000) }, "expected"],
    [coach, { ...wrapUp(), note: { deep: [[[[[1]]]]] } }, "expected"],
    [coach, "not an entry", "expected"],
    [coach, 7, "expected"],
    [coach, [], "expected"],
    [coach, {}, "expected"],
  ];
  const out = [];
  for (const [caller, one, why] of cases) {
    const answer = await send(caller, [one]);
    const [verdict] = answer.json.verdicts ?? [];
    out.push(that(why === undefined ? verdict?.verdict === "stored" : verdict?.verdict === "kept-aside" && verdict.why.includes(why), `${JSON.stringify(one).slice(0, 160)}: ${answer.status} ${answer.text.slice(0, 300)}`));
    if (why !== undefined) out.push(that(!(verdict?.why ?? "").includes("xxx"), `the reason says what was found: ${verdict?.why?.slice(0, 100)}`));
  }
  const kept = (await (await people.signIn("lead")).get("/api/quarantine")).json.kept_aside;
  return all(out, that(kept.length === cases.filter(([, , why]) => why !== undefined).length, `${kept.length} kept aside`));
}

// Who wrote it and when it came is by the credential and the server's clock, whatever the entry says.
async function forged({ people, coach }) {
  const me = (await (await people.signIn("coach")).get("/api/me")).json.account;
  const one = { ...entry("hurt", { player: "Q04", place: "knee" }), author: "a-forged", author_role: "lead", role: "lead", receipt: 1, received: "2001-01-01T00:00:00Z", device: "d-forged" };
  const answer = await coach.post("/api/sync", { client: 1, most: 0, entries: [one], author: "a-forged", role: "lead", device: "d-forged", receipt: 1 });
  const lead = await people.signIn("lead");
  const row = (await lead.get("/api/players/Q04/timeline")).json.entries.find(({ id }) => id === one.id);
  const restricted = await send(coach, [entry("restriction", { player: "Q04", areas: ["knee"], role: "lead" })]);
  return all(is(answer, 200), that(row?.author === me && row.author_role === "coach", JSON.stringify(row)), that(row?.receipt === answer.json.verdicts[0].receipt && row.received.startsWith(kDay), JSON.stringify(row)),
    that(verdicts(restricted)[0] === "kept-aside", restricted.text));
}

async function revoked({ people, coach }) {
  const lead = await people.signIn("lead");
  const account = (await lead.get("/api/accounts")).json.accounts.find(({ sign_in }) => sign_in === "coach").account;
  const { caller, confirmed } = await pair(lead, people, account);
  const before = wrapUp();
  const out = [that(verdicts(await send(caller, [before]))[0] === "stored", "a paired device is not heard")];
  await lead.post(`/api/devices/${confirmed.json.device}/revoke`);
  const last = [wrapUp({ note: "the last words" }), entry("hurt", { player: "Q05" })];
  const answer = await caller.post("/api/sync", { client: 1, entries: last });
  out.push(is(answer, 401, "revoked"), that(verdicts(answer).every((one) => one === "kept-aside") && answer.json.entries === undefined, answer.text));
  out.push(is(await caller.get("/api/device/squads/u13-kestrels/plan"), 401, "revoked"));
  const empty = await caller.post("/api/sync", { client: 1, after: 0 });
  out.push(is(empty, 401, "revoked"), that(empty.json.entries === undefined && empty.json.verdicts === undefined, empty.text));
  const kept = (await lead.get("/api/quarantine")).json.kept_aside;
  out.push(that(last.every(({ id }) => kept.some((row) => row.content.includes(id))), "the last words are not kept aside"));
  const seen = await everything(coach);
  return all(out, that(last.every(({ id }) => !seen.has(id)), "the last words stand"));
}

async function versions({ demo, server, coach }) {
  const before = stateOf(demo, server.folder);
  const out = [];
  for (const client of [0, 3, 1000000]) out.push(is(await send(coach, [wrapUp()], { client }), 426, "update-first"));
  for (const client of [-1, 1.5, "1", null, 1e12]) out.push(is(await send(coach, [wrapUp()], { client }), 400, "not-understood"));
  out.push(that(stateOf(demo, server.folder) === before, "something of another version was taken in"));
  const newer = await send(coach, [wrapUp()], { client: 2, of_version_two: { nested: [1, 2] } });
  out.push(is(newer, 200), that(verdicts(newer)[0] === "stored" && newer.json.client === 1, newer.text));
  const { json: now } = await coach.post("/api/sync", { client: 1, after: 1e12 });
  out.push(that(now.entries.length === 0 && now.begin_anew === undefined, JSON.stringify(now)));
  const first = (await coach.post("/api/sync", { client: 1, after: 0, most: 1 })).json.entries[0].receipt;
  const later = first + 500;
  const other = await coach.post("/api/sync", { client: 1, ledger: "another", after: later, most: 5 });
  out.push(that(other.json.begin_anew === true && other.json.entries.length === 5 && other.json.entries[0].receipt === first, other.text.slice(0, 300)));
  const same = await coach.post("/api/sync", { client: 1, ledger: now.ledger, after: later, most: 5 });
  out.push(that(same.json.begin_anew === undefined && same.json.entries[0].receipt > later, same.text.slice(0, 300)));
  out.push(is(await send(coach, Array(501).fill(wrapUp())), 400, "not-understood"), is(await send(coach, { 0: 1 }), 400, "not-understood"), is(await coach.post("/api/sync", { client: 1, most: 501 }), 400), is(await coach.post("/api/sync", { client: 1, after: -1 }), 400));
  return all(out);
}

// Another process holds the database for longer than the server waits.
async function held({ demo, server, coach }) {
  await coach.get("/api/device/squads");
  const other = spawn("sqlite3", [join(server.folder, "ledger.sqlite")], { stdio: ["pipe", "pipe", "inherit"] });
  const ready = new Promise((resolve, reject) => {
    other.stdout.once("data", resolve);
    other.on("error", reject);
  });
  other.stdin.write("BEGIN IMMEDIATE;\nSELECT 'held';\n");
  await ready;
  const batch = evening(5);
  const from = Date.now();
  const answer = await send(coach, batch);
  const waited = Date.now() - from;
  const read = await coach.get("/api/device/squads");
  other.stdin.end("ROLLBACK;\n");
  await new Promise((resolve) => other.on("close", resolve));
  const again = await send(coach, batch);
  return all(is(answer, 503, "store-busy"), that(waited < 20000, `${waited} ms`), is(read, 200), is(again, 200), that(verdicts(again).every((one) => one === "stored"), again.text));
}

function smallDisk(demo) {
  const folder = demo.file("disk");
  const before = ["unshare", "-rm", "sh", "-c", `mkdir -p "$1" && mount -t tmpfs -o size=24m none "$1" && cp -a "$2/." "$1/" && shift 2 && exec "$@"`, "sh", folder, demo.first];
  const possible = spawnSync(before[0], [...before.slice(1), "true"]).status === 0;
  return possible ? { folder, before } : undefined;
}

async function full({ demo, contract }) {
  const disk = smallDisk(demo);
  if (!disk) {
    contract.noSmallDisk = true;
    return { detail: "", note: "not run: no small disk can be mounted here" };
  }
  const server = await Server.start(demo.program, disk.folder, { before: disk.before, flags: ["--behind-proxy"] });
  const people = new People(demo, server, contract);
  const [coach, lead] = [people.device("coach"), await people.signIn("lead")];
  const kept = evening(5);
  const out = [that(verdicts(await send(coach, kept)).every((one) => one === "stored"), "not even before")];
  const accounts = (await lead.get("/api/accounts")).json.accounts;
  const id = (role) => accounts.find((one) => one.sign_in === role).account;
  const [device] = (await lead.get("/api/devices")).json.devices;
  await send(coach, [{ ...entry("hurt", { player: "Q09", place: "ankle" }), device_time: new Date(Date.now() - 40 * 86400e3).toISOString() }]);
  const [{ number }] = (await lead.get("/api/quarantine")).json.kept_aside;
  const opened = await lead.post("/api/pairings", { account: id("coach") });
  const claimed = await people.nobody().post("/api/pairings/claim", { link: opened.json.link, label: "A phone" });
  const second = await lead.post("/api/pairings", { account: id("coach") });
  const link = await lead.post(`/api/accounts/${id("recorder")}/link`);
  const recorder = await people.signIn("recorder");
  const begun = await recorder.post("/api/second-factor/begin");
  out.push(is(await lead.post("/api/squads/u13-kestrels/calendar-link"), 201));
  const gone = (await lead.post("/api/accounts", { sign_in: "gone", name: "Gone", role: "coach" })).json.account;
  await lead.post(`/api/accounts/${gone}/end`);
  const [job] = (await lead.post("/api/plans", { squads: ["u13-kestrels"] })).json.jobs;
  const hurt = { id: entryId(), kind: "injury-opened", player: "Q13", squad: "u13-kestrels", day: kDay };
  const agreed = { id: entryId(), kind: "consent", player: "Q13", purpose: "injury-record", by: "guardian", answer: "given", day: kDay };
  const told = await lead.post("/api/entries", { entries: [agreed, hurt] });
  out.push(that(verdicts(told).join() === "stored,stored", `no injury to write a paper about: ${told.text}`));
  const fill = join(`/proc/${server.child.pid}/root`, disk.folder, "fill");
  const sizes = [1 << 20, 1 << 16, 1 << 12];
  for (const size of sizes) {
    for (let i = 0; i < 100; i++) {
      try {
        writeFileSync(`${fill}-${size}-${i}`, Buffer.alloc(size));
      } catch {
        break;
      }
    }
  }
  // The database's own files may still have room inside: until that is used up entries are taken in, as they should.
  let answer;
  const taken = [];
  for (let i = 0; i < 200; i++) {
    const batch = evening(20, "19:00");
    answer = await send(coach, batch);
    if (answer.status !== 200) break;
    taken.push(...batch);
  }
  const batch = evening(20, "20:00");
  answer = await send(coach, batch);
  out.push(is(answer, 507, "store-full"));
  const password = people.password("coach");
  const writes = {
    "enter": () => lead.post("/api/entries", { entries: Array.from({ length: 50 }, () => ({ id: entryId(), kind: "visit", squad: "u13-kestrels", day: kDay, start: "18:00", form: "landing", note: "x".repeat(1800) })) }),
    "sign-in": () => people.nobody().post("/api/sign-in", { sign_in: "coach", password }),
    "sign-out": () => recorder.post("/api/sign-out"),
    "activate": () => people.nobody().post("/api/activate", { link: link.json.link, password: "seventeen grey gulls" }),
    "second-factor": async () => recorder.post("/api/second-factor", { secret: begun.json.secret, code: await new Authenticator(begun.json.secret).next() }),
    "step-up": async () => lead.post("/api/step-up", { code: await people.authenticators.lead.next() }),
    "password": () => recorder.post("/api/password", { old: people.password("recorder"), new: "seventeen grey gulls" }),
    "add-account": () => lead.post("/api/accounts", { sign_in: "new", name: "New", role: "coach" }),
    "charge-account": () => lead.post(`/api/accounts/${id("coach")}/charges`, { charges: [] }),
    "account-link": () => lead.post(`/api/accounts/${id("coach")}/link`),
    "end-account": () => lead.post(`/api/accounts/${id("recorder")}/end`),
    "reopen-account": () => lead.post(`/api/accounts/${gone}/reopen`),
    "withdraw-planning": () => lead.post(`/api/planning/${job.number}/withdraw`),
    "incident-report": () => lead.post(`/api/injuries/${hurt.id}/incident`),
    "referral-letter": () => lead.post(`/api/injuries/${hurt.id}/referral`),
    "revoke-device": () => lead.post(`/api/devices/${device.device}/revoke`),
    "make-calendar-link": () => lead.post("/api/squads/u13-kestrels/calendar-link"),
    "take-back-calendar-link": () => lead.post("/api/squads/u13-kestrels/calendar-link/take-back"),
    "take-in-kept": () => lead.post(`/api/quarantine/${number}/take-in`),
    "drop-kept": () => lead.post(`/api/quarantine/${number}/drop`, { why: "not-ours" }),
    "ask-for-plans": () => lead.post("/api/plans"),
    "open-pairing": () => lead.post("/api/pairings"),
    "claim-pairing": () => people.nobody().post("/api/pairings/claim", { link: second.json.link, label: "x" }),
    "confirm-pairing": () => lead.post(`/api/pairings/${opened.json.pairing}/confirm`, { code: claimed.json.code }),
    "squad": () => lead.get("/api/squads/u13-kestrels"),
    "squad-of-device": () => coach.get("/api/device/squads/u13-kestrels"),
    "timeline": () => lead.get("/api/players/Q05/timeline"),
    "export-player": () => lead.post("/api/players/Q05/export", { verified: "x" }),
    "make-release": () => lead.post("/api/releases", { from: "2026-01-01", until: "2026-06-30" }),
    "erase-player": () => lead.post("/api/players/Q05/erase", { player: "Q05" }),
  };
  const without = [];
  for (const [name, write] of Object.entries(writes)) {
    const said = await write();
    if (said.status !== 507) without.push(`${name}: ${said.status} ${said.text.slice(0, 80)}`);
  }
  out.push(that(without.length === 0, `with the disk full: ${without.join("; ")}`), is(await coach.get("/api/device/squads"), 200), is(await people.nobody().get("/ready"), 200));
  for (const size of sizes) {
    for (let i = 0; i < 100; i++) rmSync(`${fill}-${size}-${i}`, { force: true });
  }
  const again = await send(coach, batch);
  const seen = await everything(coach);
  out.push(is(again, 200), that(verdicts(again).every((one) => one === "stored"), again.text), that([...kept, ...taken, ...batch].every((one) => seen.get(one.id)?.length === 1), "not each once"));
  out.push(is(await people.nobody().post("/api/sign-in", { sign_in: "coach", password }), 200), that((await lead.get("/api/accounts")).json.accounts.length === accounts.length + 1, "an account was half made"));
  await server.stop();
  return all(out);
}

// A disk that nobody can write to.
async function readOnly({ demo }) {
  if (!smallDisk(demo)) return { detail: "", note: "not run: nothing can be mounted here" };
  const folder = demo.folder();
  const words = ["-rm", "sh", "-c", 'mount --bind "$1" "$1" && mount -o remount,bind,ro "$1" && shift && exec "$@"', "sh", folder, demo.program, "serve", "--ledger", folder, "--port", "0"];
  const before = stateOf(demo, folder);
  const said = spawnSync("unshare", words, { encoding: "utf8", timeout: 10000 });
  return all(that(said.status === 2 && /ledger\.sqlite/.test(said.stderr), `${said.status} ${said.stderr}${said.stdout}`), that(stateOf(demo, folder) === before, "the ledger is another"));
}

async function killed({ demo, contract, long }) {
  const folder = demo.folder();
  const acknowledged = new Set();
  let pending = [];
  let answers = 0;
  const rounds = long ? 60 : 6;
  for (let round = 0; round < rounds; round++) {
    const server = await Server.start(demo.program, folder, { flags: ["--behind-proxy"] });
    const people = new People(demo, server, contract);
    const sender = async (role) => {
      const caller = people.device(role);
      for (;;) {
        const batch = pending.pop() ?? evening(5, `1${Math.floor(Math.random() * 10)}:00`);
        try {
          const answer = await send(caller, batch);
          if (answer.status !== 200) throw new Error(answer.text);
          verdicts(answer).forEach((verdict, index) => ["stored", "known"].includes(verdict) && acknowledged.add(batch[index].id));
          answers++;
        } catch {
          pending.push(batch);
          return;
        }
      }
    };
    const senders = ["coach", "lead", "coach", "lead", "coach", "lead"].map(sender);
    await pause(30 + Math.random() * 120);
    await server.kill();
    await Promise.all(senders);
  }
  const server = await Server.start(demo.program, folder, { flags: ["--behind-proxy"] });
  const coach = new People(demo, server, contract).device("lead");
  const seen = await everything(coach);
  const lost = [...acknowledged].filter((id) => seen.get(id)?.length !== 1);
  for (const batch of pending) await send(coach, batch);
  const after = await everything(coach);
  const missing = pending.flat().filter(({ id }) => after.get(id)?.length !== 1);
  await server.stop();
  const books = ledger(demo, folder, "check");
  return { detail: all(that(lost.length === 0, `${lost.length} of ${acknowledged.size} acknowledged are not there once`), that(missing.length === 0, "what was sent again is not there once"), that(acknowledged.size > 50, `${acknowledged.size} only`), that(/^\d+ entries/.test(books), books)),
    note: `killed ${rounds} times; ${acknowledged.size} entries acknowledged, each there once` };
}

export const syncing = [
  withServer("a batch 10 times and 10 at once is one set", repeated),
  withServer("cut off anywhere, the reply lost, sent again", lostReplies),
  withServer("one poisoned of 50; same id, other content", poisoned),
  withServer("what is kept aside, and why", keptAside),
  withServer("who wrote it is never the entry's own word", forged),
  withServer("a revoked device's last words", revoked),
  withServer("versions and other ledgers", versions),
  withServer("the database held by another process", held, true),
  { name: "sync: a disk that is full", run: full },
  { name: "sync: a disk that nobody can write to", run: readOnly },
  { name: "sync: killed under load", run: killed },
];
