// Every route in success and in its refusals, as the right and as wrong callers; what each answers is held against
// schema/openapi.yaml on the way (caller.mjs).
import { matrixRoutes } from "../../tools/openapi.mjs";
import { cookieOf } from "./caller.mjs";
import { all, entry, is, kDay, that, wrapUp } from "./expect.mjs";
import { Authenticator } from "../../tools/authenticator.mjs";
import { People } from "./people.mjs";
import { spawnSync } from "node:child_process";
import { renameSync } from "node:fs";
import { join } from "node:path";

const kHere = { "x-forwarded-for": undefined, "x-forwarded-proto": undefined };
const kPassword = "seventeen grey gulls";
const kPlaces = { squad: "u13-kestrels", player: "Q99", account: "a-none", device: "d-none", pairing: "p-none", monday: "2026-11-23", evening: "2026-11-26-1800", roster: "roster.csv", link: "none.ics", injury: "018f3f6e-0000-7000-8000-000000000001", from: "2026-09-01", to: "2026-11-30", number: "1", release: "1" };
const path = (route, places = {}) => route.path.replace(/\{(\w+)\}/g, (_, name) => ({ ...kPlaces, ...places })[name]);

// An account of its own, with a password, signed in.
async function newcomer(lead, people, role, charges = [], password = kPassword) {
  const sign_in = `${role}-${Math.random().toString(36).slice(2, 8)}`;
  const added = await lead.post("/api/accounts", { sign_in, name: "Somebody new", role, charges });
  const nobody = people.nobody();
  const activated = await nobody.post("/api/activate", { link: added.json.link, password });
  const begun = await nobody.post("/api/sign-in", { sign_in, password });
  return { sign_in, id: added.json.account, link: added.json.link, checks: [is(added, 201), is(activated, 200), is(begun, 200)], caller: nobody.as({ cookie: cookieOf(begun) }), nobody };
}

export async function pair(lead, people, account) {
  const opened = await lead.post("/api/pairings", account === undefined ? {} : { account });
  const claimed = await people.nobody().post("/api/pairings/claim", { link: opened.json.link, label: "A phone" });
  const confirmed = await lead.post(`/api/pairings/${opened.json.pairing}/confirm`, { code: claimed.json.code });
  return { opened, claimed, confirmed, caller: people.nobody().as({ device: claimed.json.secret }) };
}

const kReads = [
  ["/api/me"], ["/api/sessions"], ["/api/accounts"], ["/api/devices"], ["/api/pairings"], ["/api/calendar-links"], ["/api/squads"], ["/api/squads/u13-kestrels"],
  ["/api/week/2026-11-23"], ["/api/week/2026-11-23/squads"], ["/api/injuries"], ["/api/coaches"], ["/api/players"], ["/api/consents"], ["/api/season/2026-09-01/2026-11-30"], ["/api/season/2026-09-01/2026-11-30/export"], ["/api/house"], ["/api/planning"], ["/api/quarantine"], ["/api/releases"], ["/api/players/Q05/timeline"], ["/api/reads"], ["/api/players/Q05/reads"],
];

async function readings({ people, lead }) {
  const out = [];
  const nobody = people.nobody();
  for (const where of ["/health", "/ready"]) out.push(is(await nobody.get(where), 200));
  out.push(is(await nobody.get("/metrics", kHere), 200), is(await nobody.get("/metrics"), 404, "not-found"));
  for (const [where] of kReads) out.push(is(await lead.get(where), 200), is(await lead.call("HEAD", where), 200));
  out.push(is(await lead.get("/api/week/2026-11-24"), 404, "not-found"), is(await lead.get("/api/week/2026-11-24/squads"), 404, "not-found"), is(await lead.get("/api/players/Q99/timeline"), 404, "not-found"), is(await lead.get("/api/squads/u99-none"), 404, "not-found"));
  const device = people.device("coach");
  for (const where of ["/api/device/squads", "/api/device/squads/u13-kestrels"]) out.push(is(await device.get(where), 200));
  out.push(is(await device.get("/api/device/squads/u12-dunnocks"), 404, "not-found"));
  return all(out);
}

async function newAccounts({ people, lead }) {
  const own = (await lead.get("/api/me")).json.account;
  const someone = await newcomer(lead, people, "coach", [{ squad: "u10-wrens" }, { squad: "u13-kestrels", until: "2099-01-01", substitute: true }]);
  const out = [...someone.checks];
  const add = (fields) => lead.post("/api/accounts", { sign_in: "x", name: "X", role: "coach", ...fields });
  out.push(is(await add({ sign_in: someone.sign_in }), 409, "sign-in-taken"));
  for (const fields of [{ sign_in: "a b" }, { role: "king" }, { charges: [{ squad: "nobody" }] }, { charges: [{ squad: "u10-wrens", substitute: true }] }, { charges: [{ squad: "u10-wrens", from: "2026-12-01", until: "2026-11-01" }] }, { charges: Array(41).fill({ squad: "u10-wrens" }) }, { name: "x".repeat(121) }, { id: "a-mine" }, { sign_in: 7 }]) {
    out.push(is(await add(fields), 400, "not-understood"));
  }
  const charges = await lead.post(`/api/accounts/${someone.id}/charges`, { charges: [{ squad: "u10-wrens", from: "2026-08-01" }] });
  out.push(is(charges, 200), that(charges.json.charges.length === 1, charges.text), is(await lead.post("/api/accounts/a-none/charges", {}), 404, "not-found"));
  const shown = charges.json.charges;
  const merged = [...shown, { squad: "u13-kestrels", from: "2026-08-01" }];
  const [one, two] = [await lead.post(`/api/accounts/${someone.id}/charges`, { before: shown, charges: merged }), await lead.post(`/api/accounts/${someone.id}/charges`, { before: shown, charges: [] })];
  out.push(is(one, 200), is(two, 409, "changed-meanwhile"), that(JSON.stringify(two.json.charges) === JSON.stringify(one.json.charges), two.text));
  out.push(is(await lead.post(`/api/accounts/${someone.id}/charges`, { before: two.json.charges, charges: shown }), 200), is(await lead.post(`/api/accounts/${someone.id}/charges`, { before: [{ squad: "u10-wrens" }], charges: [] }), 400, "not-understood"));
  const anew = await lead.post(`/api/accounts/${someone.id}/link`);
  out.push(is(anew, 201), is(await lead.post("/api/accounts/a-none/link"), 404, "not-found"));
  const nobody = people.nobody();
  out.push(is(await nobody.post("/api/activate", { link: someone.link, password: kPassword }), 410, "link-used"));
  out.push(is(await nobody.post("/api/activate", { link: anew.json.link, password: "short" }), 422, "password-not-taken"));
  out.push(is(await nobody.post("/api/activate", { link: anew.json.link, password: kPassword }), 200));
  out.push(is(await someone.caller.get("/api/me"), 401, "sign-in-needed"));
  out.push(is(await lead.post(`/api/accounts/${own}/end`), 409, "your-own"), is(await lead.post("/api/accounts/a-none/end"), 404, "not-found"));
  const last = await lead.post(`/api/accounts/${someone.id}/link`);
  out.push(is(await lead.post(`/api/accounts/${someone.id}/end`), 200), is(await lead.post(`/api/accounts/${someone.id}/link`), 409, "account-ended"));
  out.push(is(await nobody.post("/api/activate", { link: last.json.link, password: kPassword }), 410, "link-used"));
  const reopened = await lead.post(`/api/accounts/${someone.id}/reopen`);
  out.push(is(reopened, 200), that(reopened.json.ended === false && reopened.json.charges.length === 1, reopened.text), is(await lead.post(`/api/accounts/${someone.id}/reopen`), 409, "not-ended"));
  out.push(is(await lead.post("/api/accounts/a-none/reopen"), 404, "not-found"), is(await lead.post(`/api/accounts/${someone.id}/reopen`, { more: 1 }), 400, "not-understood"), is(await someone.caller.get("/api/me"), 401, "sign-in-needed"));
  out.push(is(await nobody.post("/api/sign-in", { sign_in: someone.sign_in, password: kPassword }), 200));
  for (let i = 0; i < 12; i++) await nobody.post("/api/activate", { link: `no-link-${i}`, password: kPassword });
  out.push(is(await nobody.post("/api/activate", { link: "no-link", password: kPassword }), 429, "too-many-tries"));
  return all(out);
}

async function secondFactors({ people, lead }) {
  const someone = await newcomer(lead, people, "coach");
  const out = [...someone.checks];
  const me = someone.caller;
  out.push(is(await me.post("/api/step-up", { code: "123456" }), 409, "no-second-factor"));
  const begun = await me.post("/api/second-factor/begin");
  const authenticator = new Authenticator(begun.json.secret);
  out.push(is(begun, 200), is(await me.post("/api/second-factor/begin", { more: 1 }), 400, "not-understood"));
  out.push(is(await me.post("/api/second-factor", { secret: begun.json.secret, code: "abcdef" }), 422, "second-factor-wrong"));
  out.push(is(await me.post("/api/second-factor", { secret: "AAAA", code: "123456" }), 400, "not-understood"));
  const kept = await me.post("/api/second-factor", { secret: begun.json.secret, code: await authenticator.next() });
  out.push(is(kept, 200), is(await me.get("/api/me"), 401, "sign-in-needed"));
  const after = me.as({ cookie: cookieOf(kept) });
  out.push(is(await after.get("/api/me"), 200), is(await after.post("/api/second-factor/begin"), 200));
  const halfWay = async () => {
    const answer = await someone.nobody.post("/api/sign-in", { sign_in: someone.sign_in, password: kPassword });
    out.push(that(answer.json.next === "show-second-factor", answer.text));
    return me.as({ cookie: cookieOf(answer) });
  };
  const half = await halfWay();
  out.push(is(await half.get("/api/squads"), 403, "second-factor-needed"), is(await half.post("/api/second-factor/begin"), 403, "step-up-needed"));
  out.push(is(await half.post("/api/second-factor", { secret: begun.json.secret, code: "123456" }), 403, "step-up-needed"));
  const [code] = kept.json.recovery_codes;
  const shown = await half.post("/api/step-up", { code });
  out.push(is(shown, 200), that(shown.json?.next === "in", shown.text), is(await half.get("/api/me"), 401, "sign-in-needed"));
  const again = await halfWay();
  out.push(is(await again.post("/api/step-up", { code }), 401, "second-factor-wrong"));
  const wrong = await someone.nobody.post("/api/sign-in", { sign_in: someone.sign_in, password: kPassword, code: "no-such-code" });
  out.push(is(wrong, 401, "second-factor-wrong"));
  let last;
  for (let i = 0; i < 6; i++) last = await again.post("/api/step-up", { code: "000000" });
  out.push(is(last, 429, "too-many-tries"));
  return all(out);
}

async function passwords({ people, lead }) {
  const someone = await newcomer(lead, people, "recorder");
  const out = [...someone.checks];
  const elsewhere = await people.nobody().post("/api/sign-in", { sign_in: someone.sign_in, password: kPassword });
  const change = (old, fresh) => someone.caller.post("/api/password", { old, new: fresh });
  out.push(is(await change("another", "nineteen grey gulls"), 403, "old-password-wrong"), is(await change(kPassword, "1234567"), 422, "password-not-taken"));
  const changed = await change(kPassword, "nineteen grey gulls");
  out.push(is(changed, 200), that(changed.json.ended === 1, changed.text), is(await people.nobody().as({ cookie: cookieOf(elsewhere) }).get("/api/me"), 401));
  let last;
  for (let i = 0; i < 7; i++) last = await change("another", "nineteen grey gulls");
  out.push(is(last, 429, "too-many-tries"));
  out.push(is(await someone.caller.post("/api/sessions/end-others"), 200));
  const board = await lead.post("/api/accounts", { sign_in: "board-two", name: "B", role: "board" });
  out.push(is(await people.nobody().post("/api/activate", { link: board.json.link, password: "nine chars" }), 422, "password-not-taken"));
  return all(out);
}

async function pairings({ people, lead }) {
  const accounts = (await lead.get("/api/accounts")).json.accounts;
  const id = (role) => accounts.find((one) => one.sign_in === role).account;
  const out = [is(await lead.post("/api/pairings", { account: "a-none" }), 404, "not-found"), is(await lead.post("/api/pairings", { acount: "x" }), 400, "not-understood")];
  const { opened, claimed, confirmed, caller } = await pair(lead, people, id("coach"));
  out.push(is(opened, 201), is(claimed, 201), is(confirmed, 201), is(await caller.get("/api/device/squads"), 200));
  const state = (secret) => people.nobody().post("/api/pairings/claimed", { secret });
  out.push(that((await state(claimed.json.secret)).json.state === "confirmed", "not confirmed"), is(await state("none"), 404, "not-found"));
  out.push(is(await people.nobody().post("/api/pairings/claim", { link: "x", label: "y".repeat(61) }), 400, "not-understood"));
  // Two that claim one link: neither gets in.
  const second = await lead.post("/api/pairings", { account: id("coach") });
  const first = await people.nobody().post("/api/pairings/claim", { link: second.json.link, label: "A phone" });
  out.push(is(await lead.post(`/api/pairings/${second.json.pairing}/confirm`, { code: "no" }), 409, "not-confirmed"));
  out.push(that((await state(first.json.secret)).json.state === "claimed", "not claimed"));
  out.push(is(await people.nobody().post("/api/pairings/claim", { link: second.json.link, label: "Another phone" }), 410, "link-used"));
  out.push(that((await state(first.json.secret)).json.state === "suspended", "not suspended"));
  out.push(is(await lead.post(`/api/pairings/${second.json.pairing}/confirm`, { code: first.json.code }), 409, "not-confirmed"));
  let last;
  for (let i = 0; i < 6; i++) last = await lead.post(`/api/pairings/${second.json.pairing}/confirm`, { code: "no" });
  out.push(is(last, 429, "too-many-tries"), is(await people.nobody().as({ device: first.json.secret }).get("/api/device/squads"), 401, "sign-in-needed"));
  const guesser = people.nobody();
  for (let i = 0; i < 12; i++) last = await guesser.post("/api/pairings/claim", { link: `no-link-${i}`, label: "z" });
  out.push(is(last, 429, "too-many-tries"), is(await lead.get("/api/pairings"), 200));
  // A board member's device gets nothing; a revoked one neither.
  const ofBoard = (await pair(lead, people, id("board"))).caller;
  out.push(is(await ofBoard.get("/api/device/squads"), 403, "not-your-role"), is(await ofBoard.post("/api/sync", { client: 1 }), 403, "not-your-role"), is(await ofBoard.get("/api/device/squads/u13-kestrels"), 404, "not-found"));
  out.push(is(await lead.post(`/api/devices/${confirmed.json.device}/revoke`), 200), is(await lead.post("/api/devices/d-none/revoke"), 404, "not-found"));
  for (const where of ["/api/device/squads", "/api/device/squads/u13-kestrels", "/api/device/squads/u13-kestrels/evenings"]) out.push(is(await caller.get(where), 401, "revoked"));
  out.push(is(await caller.post("/api/sync", { client: 1, entries: [wrapUp()] }), 401, "revoked"));
  return all(out);
}

async function oneChild({ people, lead }) {
  const hurt = entry("hurt", { player: "Q07", place: "knee" });
  const out = [is(await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: [hurt] }), 200)];
  const exported = await lead.post("/api/players/Q07/export", { verified: "came in person, known to the lead" });
  out.push(is(exported, 200), that(exported.json.entries.some((one) => one.id === hurt.id), "the entry is not in the copy"));
  out.push(is(await lead.post("/api/players/Q07/export", {}), 400, "not-understood"), is(await lead.post("/api/players/Q07/export", { verified: "x".repeat(201) }), 400, "not-understood"));
  out.push(is(await lead.post("/api/players/Q99/export", { verified: "x" }), 404, "not-found"));
  out.push(is(await lead.post("/api/players/Q07/erase", { player: "Q08" }), 422, "not-the-same"), is(await lead.post("/api/players/Q99/erase", { player: "Q99" }), 404, "not-found"));
  const before = await lead.get("/api/players/Q07/reads");
  out.push(that(before.json.reads.some((one) => one.what === "export-player"), "the book does not say that a copy left"));
  out.push(is(await lead.post("/api/players/Q07/erase", { player: "Q07" }), 200), is(await lead.get("/api/players/Q07/timeline"), 404, "not-found"));
  const resent = await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: [hurt] });
  out.push(that(resent.json.verdicts[0].verdict === "dropped", resent.text));
  return all(out);
}

// The last backup and its check as they were noted on the machine, and what goes next.
async function whatIsDoneAboutTheData({ demo, server, people, lead }) {
  const before = (await lead.get("/api/house")).json;
  const keys = join(server.folder, "keys");
  const ran = (...words) => spawnSync(demo.program, words, { encoding: "utf8" });
  const steps = [ran("backup", "keys", "--out", keys), ran("backup", "--ledger", server.folder, "--to", join(server.folder, "one.backup"), "--for", join(keys, "backup.public"))];
  const written = (await (await people.signIn("operator")).get("/api/house")).json;
  const checked = ran("backup", "check", join(server.folder, "one.backup"), "--private", join(keys, "backup.private"), "--key", join(server.folder, "ledger.key"));
  const [, made] = /backup checked (\S+) --ledger/.exec(checked.stdout) ?? [];
  const elsewhere = ran("backup", "checked", "2026-01-01T00:00:00+01:00", "--ledger", server.folder);
  const noted = ran("backup", "checked", String(made), "--ledger", server.folder);
  const { backup, retention, key_since } = (await lead.get("/api/house")).json;
  const evenings = retention.find((one) => one.class === "evenings");
  return all([...steps, checked, noted].map((said) => that(said.status === 0, said.stdout + said.stderr)),
    that(Object.keys(before.backup).length === 0, JSON.stringify(before)), that(written.backup.where === "one.backup" && written.backup.checked === undefined, JSON.stringify(written)),
    that(elsewhere.status === 2 && /a backup of this ledger/.test(elsewhere.stderr), elsewhere.stderr), that(backup.last === made && backup.checked_one === made && backup.checked >= made, JSON.stringify(backup)),
    that(evenings.keeps_days === 730 && evenings.would_go > 0 && evenings.next_day > kDay && key_since < new Date().toISOString(), JSON.stringify(retention)),
    is(await (await people.signIn("coach")).get("/api/house"), 403, "not-your-role"), is(await (await people.signIn("board")).get("/api/house"), 403, "not-your-role"));
}

// What the coach is told of a restricted player is what to do; the lead is told why; the recorder nothing.
async function whatEachIsTold({ people, lead }) {
  const { standing: before } = (await lead.get("/api/squads/u13-kestrels")).json;
  const { player } = before.find((one) => one.word === "joins in");
  const restricted = entry("restriction", { player, areas: ["knee"], kinds: ["impact"], until: "2099-01-01" });
  const sent = await people.device("lead").post("/api/sync", { client: 1, most: 0, entries: [restricted] });
  const standing = async (caller) => (await caller.get("/api/squads/u13-kestrels")).json.standing;
  const row = (rows) => rows.find((one) => one.player === player);
  const [coach, recorder] = [await people.signIn("coach"), await people.signIn("recorder")];
  const [seen, told] = [row(await standing(lead)), row(await standing(coach))];
  return all(is(sent, 200), that(sent.json.verdicts[0].verdict === "stored", sent.text),
    that(Object.keys(told).join() === "player,word,instructions,until" && told.word === "joins in with swaps" && told.instructions.length === 1, JSON.stringify(told)),
    that(seen.reasons?.length === 1, JSON.stringify(seen)), that((await standing(recorder)).every((one) => Object.keys(one).length === 0), "a recorder is told"));
}

async function signOut({ people }) {
  const coach = await people.signIn("coach");
  const out = await coach.post("/api/sign-out");
  return all(is(out, 200), is(await coach.get("/api/me"), 401, "sign-in-needed"));
}

const kOut = new Set(["sign-out"]);  // would end the session that the next needs

// Every route by every role, through the table: who is let in gets past the door, who is not does not.
async function matrix({ people, lead }) {
  const callers = { lead, coach: await people.signIn("coach"), recorder: await people.signIn("recorder"), board: await people.signIn("board"), operator: await people.signIn("operator") };
  const out = [];
  for (const route of matrixRoutes().filter(({ by, name }) => by === "browser" && !kOut.has(name))) {
    for (const [role, caller] of Object.entries(callers)) {
      const answer = route.method === "GET" ? await caller.get(path(route)) : await caller.post(path(route), { no_such_key: 1 });
      const squad = route.about === "squad";
      const may = squad ? route[role].includes("own") : route[role] === "yes";
      const wanted = route.step_up && ["coach", "recorder"].includes(role) ? "step-up-needed" : squad ? "not-found" : "not-your-role";
      const refused = squad && wanted === "not-found" ? answer.status === 404 && !answer.text.includes("no club's folder") : answer.status === 403;
      out.push(that(may ? !refused : refused && answer.json.error === wanted, `${role} ${route.name}: ${answer.status} ${answer.text.slice(0, 100)}`));
    }
  }
  return all(out);
}

// Whoever shows nothing, something wrong, or the wrong kind of thing; from another site; in another form.
async function wrongCallers({ people, lead }) {
  const out = [];
  const nobody = people.nobody();
  const half = await people.signIn("lead", { halfWay: true });
  const device = people.device("lead");
  for (const route of matrixRoutes().filter(({ by }) => by !== "this-machine")) {
    const where = path(route);
    const ask = (caller, body = {}, more = {}) => (route.method === "GET" ? caller.get(where, more) : caller.post(where, body, more));
    const right = route.by === "device" ? device : route.by === "browser" ? lead : nobody;
    if (route.by !== "nobody") {
      const strangers = [nobody, nobody.as({ cookie: "x".repeat(43) }), nobody.as({ device: "x".repeat(43) }), route.by === "device" ? nobody.as({ cookie: lead.cookie }) : nobody.as({ device: device.device }), nobody.as({ cookie: "" }), nobody.as({ device: "" })];
      for (const caller of strangers) out.push(is(await ask(caller), 401, "sign-in-needed"));
    }
    if (route.by === "browser" && !route.before_second_factor) out.push(is(await ask(half), 403, "second-factor-needed"));
    if (route.method === "POST") {
      out.push(is(await ask(right, "{", {}), 400, "not-understood"), is(await ask(right, "[1]", {}), 400, "not-understood"), is(await ask(right, "", {}), 400, "not-understood"));
      for (const type of ["application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "text/plain", undefined]) out.push(is(await ask(right, {}, { "content-type": type }), 415, "not-json"));
      for (const more of [{ "lanework-request": undefined }, { "lanework-request": "0" }, { origin: "https://elsewhere.example" }, { origin: "null" }, { "sec-fetch-site": "cross-site" }, { "sec-fetch-site": "same-site" }]) {
        out.push(is(await ask(right, {}, more), 403, "not-from-here"));
      }
    }
    for (const method of ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND", route.method === "GET" ? "POST" : "GET"]) {
      const answer = await right.call(method, where, method === "POST" ? {} : undefined);
      const both = ["/api/accounts", "/api/pairings", "/api/releases", "/api/club/documents"].includes(route.path) && ["GET", "POST"].includes(method);
      if (!both) out.push(is(answer, 405, "no-such-method"));
    }
  }
  return all(out);
}

// One account or device that asks all the time: told to wait, and only that one.
async function tooFast({ people }) {
  const [coach, recorder] = [people.device("coach"), await people.signIn("recorder")];
  const answers = [];
  for (let i = 0; i < 260; i++) answers.push(await coach.get("/api/device/squads"));
  const sent = await coach.post("/api/sync", { client: 1 });
  const heard = answers.map(({ status }) => status);
  const first = heard.indexOf(429);
  const session = [];
  for (let i = 0; i < 260; i++) session.push((await recorder.get("/api/me")).status);
  return all(that(first >= 240 && first <= 250, `refused from the ${first}th on`), is(answers[first], 429, "too-fast"), that(session.indexOf(429) >= 240 && session.indexOf(429) <= 250, `a session: ${session.indexOf(429)}`),
    is(await people.device("lead").get("/api/device/squads"), 200), is(await (await people.signIn("coach")).get("/api/me"), 200), is(sent, 429, "too-fast"));
}

// A store that cannot be opened: nobody gets anything, and is told to come back.
async function noStore({ demo, contract }) {
  const server = await demo.serve({ flags: ["--behind-proxy"] });
  const key = join(server.folder, "ledger.key");
  renameSync(key, `${key}.away`);
  const people = new People(demo, server, contract);
  const out = [];
  for (const route of matrixRoutes()) {
    const answer = route.method === "GET" ? await people.nobody().get(path(route), route.name === "metrics" ? kHere : {}) : await people.nobody().post(path(route));
    out.push(route.name === "health" ? is(answer, 200) : is(answer, 503, "store-busy"));
  }
  renameSync(`${key}.away`, key);
  out.push(is(await people.nobody().get("/ready"), 200));
  await server.stop();
  return all(out);
}

const kSteps = { readings, newAccounts, secondFactors, passwords, pairings, oneChild, whatIsDoneAboutTheData, whatEachIsTold, signOut, matrix, wrongCallers };
const kNames = {
  readings: "what is read", newAccounts: "accounts", secondFactors: "second factors", passwords: "passwords", pairings: "pairings", oneChild: "one child", whatIsDoneAboutTheData: "what is done about the data",
  whatEachIsTold: "what each is told of a restricted player", signOut: "sign-out", matrix: "every route by every role, as the table has it", wrongCallers: "wrong callers, forms and methods",
};

export const everyRoute = [
  ...Object.entries(kSteps).map(([step, work]) => ({
    name: `routes: ${kNames[step]}`,
    async run({ demo, contract }) {
      const server = await demo.serve({ flags: ["--behind-proxy"], mayRestart: true });
      const people = new People(demo, server, contract);
      const said = await work({ demo, contract, server, people, lead: await people.signIn("lead") });
      await server.stop();
      return said;
    },
  })),
  { name: "routes: a store that cannot be opened", run: noStore },
  {
    name: "routes: asking all the time",
    async run({ demo, contract }) {
      const server = await demo.serve({ flags: ["--behind-proxy"] });
      const said = await tooFast({ people: new People(demo, server, contract) });
      await server.stop();
      return said;
    },
  },
];
