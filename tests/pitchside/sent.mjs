// What waits is sent, whatever is on the way: every row of docs/formats/sync.md.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { all, kDay, kSession, that } from "../serve/expect.mjs";
import { pause, Server } from "../serve/server.mjs";
import { keepPackage, later, packageOf, tap } from "./kept.mjs";
import { onPhone } from "./paired.mjs";

const once = (seen, ids) => ids.every((id) => seen.get(id)?.length === 1);
const idsOf = (steps) => steps.flatMap((step) => step.entries.map(({ id }) => id));

async function kinds(set) {
  const { page, way } = set;
  const made = await page.evaluate(async (session) => {
    const first = await window.lane.keep.step("evening", (entries) => ({ started: entries[0].id }), [{ kind: "session-started", ...session, plan: "q7" }]);
    const { started } = await window.lane.keep.evening("evening");
    const second = await window.lane.keep.step("evening", {}, [
      { kind: "drill-marked", ...session, drill: "side-plank", mark: "needs-help" },
      { kind: "attendance", ...session, there: 12, players: ["Q03", "Q05"] },
      { kind: "wrap-up", ...session, happened: "held", did_it: "most", minutes: 17, note: "Wet" },
      { kind: "hurt", player: "Q03", place: "knee", signs: ["swelling"] },
      { kind: "soreness", player: "Q05", place: "knee", before: 3 },
      { kind: "taken-back", ...session, corrects: started },
    ]);
    return { entries: [...first.entries, ...second.entries], started };
  }, kSession);
  const books = await set.run();
  const seen = await set.seen();
  const sent = way.sent();
  return all(that(books.waiting === 0 && books.told.length === 0 && books.trouble === undefined, JSON.stringify(books)), that(made.entries[0].id === made.started, "the evening does not know its entry's id"),
    that(made.entries.length === 7 && once(seen, made.entries.map(({ id }) => id)), `not all are there: ${[...seen.values()].map(([one]) => one.kind)}`), that(sent.length === 1, `${sent.length} requests`));
}

async function lost(set) {
  const { page, way } = set;
  const ids = idsOf(await tap(page, 5));
  way.set("lost");
  const unheard = await set.run();
  const out = [that(unheard.waiting === 5 && unheard.trouble === "no-signal", JSON.stringify(unheard)), that(once(await set.seen(), ids), "the server did not take it in")];
  way.set("through");
  const heard = await set.run();
  const dump = JSON.parse(await page.evaluate(() => window.lane.dump()));
  out.push(that(heard.waiting === 0 && heard.trouble === undefined && dump.acknowledged.length === 5, JSON.stringify(heard)), that(once(await set.seen(), ids), "not each once"));
  const quiet = await set.run();
  return all(out, that(quiet.waiting === 0 && way.sent().at(-1).entries === 0, "the outbox empties twice"));
}

const kRefusals = [
  ["a hotel's page", { status: 200, body: "<html>Welcome! Room number?</html>" }, "no-signal"],
  ["a hotel's JSON", { status: 200, body: { welcome: true } }, "no-signal"],
  ["a hotel's 401", { status: 401, body: "<html>Sign in</html>" }, "no-signal"],
  ["a list", { status: 200, body: [] }, "no-signal"],
  ["another place", { status: 302, headers: { location: "http://127.0.0.1:9/" }, body: "" }, "no-signal"],
  ["a proxy's 502", { status: 502, body: "<html>Bad gateway</html>" }, "no-signal"],
  ["verdicts of something else", { status: 200, body: { client: 1, ledger: "x", now: "2026-11-26T18:05:00+01:00", verdicts: [{ id: "019b1c2e-7d40-7a31-8c55-0f3a51b2c6d7", verdict: "stored" }, { verdict: "stored" }], entries: [], after: 0, more: false } }, "update-first"],
  ["too few verdicts", { status: 200, body: { client: 1, ledger: "x", now: "2026-11-26T18:05:00+01:00", verdicts: [], entries: [], after: 0, more: false } }, "update-first"],
  ["400", { status: 400, body: { error: "not-understood", what: "." } }, "app-mistake"],
  ["403", { status: 403, body: { error: "not-your-role", what: "." } }, "not-your-role"],
  ["426", { status: 426, body: { error: "update-first", what: "." } }, "update-first"],
  ["429", { status: 429, headers: { "retry-after": "1" }, body: { error: "too-fast", what: "." } }, "too-fast"],
  ["503", { status: 503, headers: { "retry-after": "1" }, body: { error: "store-busy", what: "." } }, "server-busy"],
  ["507", { status: 507, headers: { "retry-after": "1" }, body: { error: "store-full", what: "." } }, "server-full"],
];

async function refusals(set) {
  const { page, way } = set;
  const ids = idsOf(await tap(page, 2));
  await keepPackage(page, packageOf("u13-kestrels", later(1)));
  const out = [];
  for (const [name, said, trouble] of kRefusals) {
    way.set("says", said);
    const books = await set.run();
    const squads = await page.evaluate(async () => (await window.lane.keep.packages()).length);
    out.push(that(books.waiting === 2 && books.trouble === trouble && squads === 1, `${name}: ${books.waiting} wait, ${books.trouble}, ${squads} packages`));
    if (!said.headers?.["retry-after"]) continue;
    const asked = way.sent().length;
    await page.evaluate(() => window.lane.sync.sendNow());
    out.push(that(way.sent().length === asked, `${name}: asked again at once`));
    await pause(1050);
  }
  way.set("says", { status: 401, body: { error: "sign-in-needed", what: "." } });
  const stranger = await set.run();
  out.push(that(stranger.waiting === 2 && stranger.trouble === "pair-anew" && stranger.device.standing === "stranger", JSON.stringify(stranger)));
  way.set("cut");
  const cut = await set.run();
  out.push(that(cut.waiting === 2 && cut.trouble === "no-signal", JSON.stringify(cut)));
  way.set("through");
  const books = await set.run();
  return all(out, that(books.waiting === 0 && books.device.standing === "paired" && once(await set.seen(), ids), JSON.stringify(books)));
}

async function chunks(set) {
  const { page, way } = set;
  await page.evaluate(async (session) => {
    await window.lane.keep.step("evening", {}, Array.from({ length: 1203 }, (_, index) => ({ kind: "drill-marked", ...session, drill: `drill-${index}`, mark: "done" })));
  }, kSession);
  const before = await set.books();
  const sent = await set.run();
  const counts = way.sent().map(({ entries }) => entries);
  const out = [that(before.waiting === 1203 && sent.waiting === 0, JSON.stringify([before.waiting, sent])), that(counts.join() === "500,500,203", counts.join())];
  // Long ones go by their size, and by half where the way takes less.
  await page.evaluate(async (session) => {
    await window.lane.keep.step("evening", {}, Array.from({ length: 400 }, () => ({ kind: "wrap-up", ...session, happened: "held", note: "å".repeat(500), players_words: "x".repeat(2000) })));
  }, kSession);
  way.seen.length = 0;
  way.set("narrow", { bytes: 400000 });
  const narrow = await set.run();
  const tries = way.sent();
  out.push(that(narrow.waiting === 0 && narrow.trouble === undefined, JSON.stringify(narrow)), that(Math.max(...tries.map(({ bytes }) => bytes)) < 1 << 20 && tries.length > 3, JSON.stringify(tries)));
  return all(out, that((await set.seen()).size === 1603, `${(await set.seen()).size} there`));
}

// Five weeks by the server's clock; the phone's own counts for nothing.
async function old(set) {
  const { page, way } = set;
  const counts = async () => {
    const { acknowledged, outbox, evening } = JSON.parse(await page.evaluate(() => window.lane.dump()));
    return `${acknowledged.length} ${outbox.length} ${evening.length}`;
  };
  await page.evaluate(() => window.lane.keep.step("another", {}, []));
  await tap(page, 3);
  await set.run();
  await page.evaluate((milliseconds) => window.lane.shiftClock(milliseconds), 3 * 365 * 86400e3);
  await set.run();
  const out = [that((await counts()) === "3 0 2", await counts())];
  const { ledger } = (await set.books()).device;
  const at = (days) => way.set("says", { path: /sync$/, status: 200, body: { client: 1, ledger, now: later(24 * days), entries: [], after: 0, more: false } });
  at(34);
  await set.run();
  out.push(that((await counts()) === "3 0 2", `${await counts()} after 34 days`));
  at(36);
  await set.run();
  return all(out, that((await counts()) === "0 0 1", `${await counts()} after 36 days`));
}

async function otherContent(set) {
  const { page, caller } = set;
  const [{ entries: [entry] }] = await tap(page);
  const said = await caller.post("/api/sync", { client: 1, most: 0, entries: [{ ...entry, mark: "skipped" }] });
  const books = await set.run();
  const out = [that(said.json.verdicts[0].verdict === "stored", said.text), that(books.waiting === 0 && books.told.length === 1 && books.told[0].verdict === "other-content" && books.told[0].entry.mark === "done", JSON.stringify(books.told))];
  await page.evaluate((sequence) => window.lane.keep.sawTold(sequence), entry.sequence);
  const seen = await set.books();
  // About a squad that is not the coach's: kept aside, and the owner hears why.
  await page.evaluate((day) => window.lane.keep.step("evening", {}, [{ kind: "wrap-up", squad: "u12-dunnocks", day, start: "18:00", happened: "held" }]), kDay);
  const aside = await set.run();
  return all(out, that(seen.told.length === 0, "told again"), that(aside.waiting === 0 && aside.told[0]?.verdict === "kept-aside" && /squad/.test(aside.told[0].why), JSON.stringify(aside.told)));
}

async function revoked(set) {
  const { page, lead, device } = set;
  await keepPackage(page, packageOf("u13-kestrels", later(24)));
  await tap(page, 2);
  await set.run();
  const ids = idsOf(await tap(page, 3));
  await keepPackage(page, packageOf("u13-kestrels", later(24)));
  const said = await lead.post(`/api/devices/${device}/revoke`);
  const offline = await set.books();
  const books = await set.run();
  const dump = await page.evaluate(() => window.lane.dump());
  const aside = (await lead.get("/api/quarantine")).json.kept_aside;
  const refused = (await tap(page))[0];
  return all(that(said.status === 200, said.text), that(offline.waiting === 3, JSON.stringify(offline)), that(books.waiting === 0 && books.trouble === "revoked" && books.device === undefined, JSON.stringify(books)),
    that(!/Wilhelmina|Q03|kestrels/.test(dump), dump), that(ids.every((id) => aside.some(({ content }) => content.includes(id))), `kept aside: ${JSON.stringify(aside).slice(0, 300)}`),
    that(refused.kept === false && refused.why === "not-paired", JSON.stringify(refused)));
}

// The route is stood in for where the program has none yet; the list of squads is the server's own.
async function packages(set) {
  const { page, way } = set;
  const held = () => page.evaluate(async () => (await window.lane.keep.packages()).map((one) => `${one.package.squad.id} ${one.package.ask}`).sort().join());
  const now = () => page.evaluate(() => window.lane.sync.sendNow());
  const said = (path, status, body) => way.set("says", { path, status, body });
  const own = (await set.caller.get("/api/device/squads")).json.squads.map(({ id }) => id);
  await keepPackage(page, packageOf(own[0], later(1), { ask: "old" }));
  await keepPackage(page, packageOf("no-longer-theirs", later(1)));
  said(/evenings$/, 404, { error: "not-found", what: "There is nothing here for you." });
  await now();
  const out = [that((await held()) === `${own[0]} old`, `${await held()} after 404`), that(way.seen.filter(({ path }) => /evenings$/.test(path)).length === own.length, "not every squad was asked for")];
  for (const body of ["<html>Welcome</html>", { ...packageOf("another", later(1)) }, packageOf(own[0], "some day", { ask: "bad" }), packageOf(own[0], later(1), { version: 2, ask: "newer" })]) {
    said(/evenings$/, 200, body);
    await now();
    out.push(that((await held()) === `${own[0]} old`, `${await held()} after ${JSON.stringify(body).slice(0, 60)}`));
  }
  said(new RegExp(`${own[0]}/evenings$`), 200, packageOf(own[0], later(2), { ask: "new" }));
  await now();
  out.push(that((await held()).includes(`${own[0]} new`), await held()));
  said(/^\/api\/device\/squads$/, 401, { error: "revoked", what: "This device is no longer part of the club." });
  await now();
  const books = await set.books();
  return all(out, that((await held()) === "" && books.device === undefined && books.trouble === "revoked", JSON.stringify(books)));
}

async function byItself(set) {
  const { page, phone, way } = set;
  const sentAfter = async (what) => {
    const from = Date.now();
    const done = await page.waitForFunction(() => window.lane.keep.books.value.waiting === 0, undefined, { timeout: 8000 }).catch(() => undefined);
    return that(done !== undefined, `not sent ${what} in ${Date.now() - from} ms`);
  };
  await tap(page);
  await page.evaluate(() => window.lane.sync.start());
  const out = [await sentAfter("on opening")];
  await tap(page);
  out.push(await sentAfter("soon after a tap"));
  await phone.context.setOffline(true);
  await tap(page, 2);
  await pause(2500);
  const off = await set.books();
  await phone.context.setOffline(false);
  out.push(that(off.waiting === 2 && off.trouble === "no-signal", JSON.stringify(off)), await sentAfter("when signal came"));
  way.set("cut");
  await tap(page);
  await pause(2500);
  way.set("through");
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  return all(out, await sentAfter("when the app came into view"), that((await set.seen()).size === 5, "not each once"));
}

// The backup is from between two evenings of the phone; what came after it is on the phone alone.
async function restored(set) {
  const { demo, page, way, server, phone } = set;
  const run = (...words) => {
    const said = spawnSync(demo.program, words, { encoding: "utf8" });
    if (said.status !== 0) throw new Error(`${words}: ${said.stderr}${said.stdout}`);
  };
  const [keys, backup, again] = ["keys", "backup", "again"].map((name) => demo.file(name));
  const ids = idsOf(await tap(page, 4));
  await set.run();
  run("backup", "keys", "--out", keys);
  run("backup", "--ledger", server.folder, "--to", backup, "--for", join(keys, "backup.public"));
  ids.push(...idsOf(await tap(page, 6)));
  await set.run();
  await server.stop();
  run("restore", backup, "--private", join(keys, "backup.private"), "--key", join(server.folder, "ledger.key"), "--ledger", again, "--erased", "none");
  const second = await Server.start(demo.program, again, { flags: ["--web", demo.web, "--key", join(server.folder, "ledger.key")], mayRestart: true });
  try {
    way.server = second;
    ids.push(...idsOf(await tap(page, 2)));
    const books = await set.run();
    set.ofLead.server = second;
    const lead = set.ofLead.as({ device: set.ofLead.device });
    const seen = await set.seen(lead);
    const quiet = await set.run();
    return all(that(books.waiting === 0 && books.trouble === undefined, JSON.stringify(books)), that(once(seen, ids) && seen.size === 12, `${seen.size} there, of ${ids.length}`), that(quiet.waiting === 0 && way.sent().at(-1).entries === 0, "it goes on sending"), that(phone.said.every((line) => !line.startsWith("error")), phone.said.join("\n")));
  } finally {
    await second.stop();
  }
}

export const sent = [
  onPhone("every kind of entry is taken in", kinds),
  onPhone("a reply that is lost after the server has written", lost),
  onPhone("answers that are none, and every refusal", refusals),
  onPhone("a long backlog goes in parts, smaller where the way is narrow", chunks),
  onPhone("other content and what is kept aside are told", otherContent),
  onPhone("a device that was revoked delivers and is wiped", revoked),
  onPhone("what was acknowledged goes after five weeks", old),
  onPhone("packages are fetched, trimmed, and kept where none comes", packages),
  onPhone("it sends by itself", byItself),
  onPhone("a server restored from a backup gets everything again", restored),
];
