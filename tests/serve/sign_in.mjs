// Guessing is slow and locks nobody out for long; a code is good once; a session that ended is dead everywhere; and
// nothing tells somebody who is not there from a wrong password.
import { matrixRoutes } from "../../tools/openapi.mjs";
import { cookieOf, freshAddress } from "./caller.mjs";
import { all, is, that } from "./expect.mjs";
import { pair } from "./every_route.mjs";
import { Authenticator, codeOf, fromBase32 } from "../../tools/authenticator.mjs";
import { People } from "./people.mjs";
import { pause } from "./server.mjs";

const withServer = (name, work, more = {}) => ({
  name: `sign-in: ${name}`,
  ...more,
  async run({ demo, contract, long: mode }) {
    const server = await demo.serve({ flags: ["--behind-proxy"] });
    const said = await work({ demo, contract, server, people: new People(demo, server, contract), long: mode });
    await server.stop();
    return said;
  },
});

const tryIn = (caller, sign_in, password, code) => caller.post("/api/sign-in", { sign_in, password, code });
const statuses = (answers) => answers.map(({ status }) => status);

// 200 wrong ones from one address: five are free, then the waits double; elsewhere the right one goes on working.
async function guessing({ people }) {
  const guesser = people.nobody();
  const first = [];
  for (let i = 0; i < 197; i++) first.push(await tryIn(guesser, "coach", `wrong ${i}`));
  const heard = statuses(first);
  const free = heard.indexOf(429);  // waits are whole seconds: one that begins at a second's end is over at once
  const out = [that(free >= 6 && free <= 8 && heard.slice(0, 6).every((one) => one === 401), `${heard.slice(0, 12)}`), that(heard.filter((one) => one === 401).length <= 9, `${heard.filter((one) => one === 401).length} guesses of 197 were looked at`)];
  const waits = [];
  for (let i = 0; i < 3; i++) {
    let answer = await tryIn(guesser, "coach", "wrong again");
    while (answer.status !== 401) {
      waits.push(Number(answer.headers["retry-after"]));
      await pause(1000 * Number(answer.headers["retry-after"]) + 50);
      answer = await tryIn(guesser, "coach", "wrong again");
    }
    const after = await tryIn(guesser, "coach", "wrong again");
    waits.push(Number(after.headers["retry-after"]));
  }
  const longest = waits.reduce((most, one) => Math.max(most, one), 0);
  out.push(that(longest >= 4, `the waits are ${waits}`), is(await tryIn(guesser, "coach", people.password("coach")), 429, "too-many-tries"));
  out.push(is(await tryIn(people.nobody(), "coach", people.password("coach")), 200));
  // Once in, the count of that pair alone is forgotten: the guesser's stays.
  out.push(is(await tryIn(guesser, "coach", "wrong"), 429));
  return { detail: all(out), note: `waits of a guesser: ${waits.join(", ")} s` };
}

// One address that tries many names waits too; another address does not.
async function manyNames({ people }) {
  const guesser = people.nobody();
  const answers = [];
  for (let i = 0; i < 23; i++) answers.push(await tryIn(guesser, `nobody-${i}`, "wrong"));
  const heard = statuses(answers);
  return all(that(heard.slice(0, 21).every((one) => one === 401) && heard.slice(21).includes(429), `${heard}`), is(await tryIn(guesser, "coach", people.password("coach")), 429), is(await tryIn(people.nobody(), "coach", people.password("coach")), 200));
}

// Many addresses that try one name: its owner waits for half a minute at most.
async function manyAddresses({ people }) {
  const answers = [];
  for (let i = 0; i < 112; i++) answers.push(await tryIn(people.nobody(), "coach", "wrong"));
  const waits = answers.filter(({ status }) => status === 429).map(({ headers }) => Number(headers["retry-after"]));
  const own = await tryIn(people.nobody(), "coach", people.password("coach"));
  return all(that(waits.length > 0 && Math.max(...waits) <= 30, `${waits}`), that(own.status === 200 || Number(own.headers["retry-after"]) <= 30, own.text), that(statuses(answers).slice(0, 101).every((one) => one === 401), "before a hundred"));
}

// The caller's own word about where it comes from does not count.
async function forwarded({ people }) {
  const guesser = people.nobody();
  const answers = [];
  for (let i = 0; i < 8; i++) answers.push(await guesser.post("/api/sign-in", { sign_in: "coach", password: "wrong" }, { "x-forwarded-for": `${freshAddress()}, ${guesser.address}` }));
  return that(statuses(answers).includes(429), `${statuses(answers)}`);
}

// Whoever has a whole IPv6 network has a new address for every try, and is one caller all the same; the next network is another.
async function wholeNetwork({ people }) {
  const from = (address) => people.nobody().as({ address });
  const answers = [];
  for (let i = 1; i <= 8; i++) answers.push(await tryIn(from(`2001:db8:7:7:${i}::${i}`), "coach", "wrong"));
  return all(that(statuses(answers).slice(0, 6).every((one) => one === 401) && statuses(answers).includes(429), `${statuses(answers)}`), is(await tryIn(from("2001:db8:7:7:ffff::1"), "coach", people.password("coach")), 429, "too-many-tries"),
    is(await tryIn(from("2001:db8:7:8::1"), "coach", people.password("coach")), 200));
}

async function withoutProxy({ demo, contract }) {
  const server = await demo.serve();
  const people = new People(demo, server, contract);
  const answers = [];
  for (let i = 0; i < 8; i++) answers.push(await people.nobody().post("/api/sign-in", { sign_in: "coach", password: "wrong" }, { "x-forwarded-for": freshAddress() }));
  await server.stop();
  return that(statuses(answers).includes(429), `X-Forwarded-For counts without a proxy: ${statuses(answers)}`);
}

async function codesOnce({ people }) {
  const secret = fromBase32(people.secrets.LEAD_SECOND);
  const password = people.password("lead");
  const step = Math.floor(Date.now() / 30000);
  const out = [];
  const ask = (code) => tryIn(people.nobody(), "lead", password, code);
  out.push(is(await ask(codeOf(secret, step)), 200), is(await ask(codeOf(secret, step)), 401, "second-factor-wrong"));
  out.push(is(await ask(codeOf(secret, step - 1)), 401, "second-factor-wrong"), is(await ask(codeOf(secret, step - 40)), 401, "second-factor-wrong"), is(await ask(codeOf(secret, step + 40)), 401, "second-factor-wrong"));
  // Ten at once with one code: one gets in.
  const next = codeOf(secret, Math.floor(Date.now() / 30000) + 1);
  const raced = statuses(await Promise.all(Array.from({ length: 5 }, () => ask(next))));
  out.push(that(raced.filter((one) => one === 200).length === 1, `raced: ${raced}`));
  return all(out);
}

// A cookie after the end of what it was for: dead on every route.
async function deadSessions({ people }) {
  const lead = await people.signIn("lead");
  const added = await lead.post("/api/accounts", { sign_in: "short-lived", name: "X", role: "lead" });
  const password = "seventeen grey gulls";
  await people.nobody().post("/api/activate", { link: added.json.link, password });
  const begin = async () => {
    const answer = await tryIn(people.nobody(), "short-lived", password);
    return people.nobody().as({ cookie: cookieOf(answer) });
  };
  const out = [];
  const places = { squad: "u13-kestrels", player: "Q05", account: "a-none", device: "d-none", pairing: "p-none", monday: "2026-11-23", from: "2026-09-01", to: "2026-11-30" };
  const dead = async (what, caller) => {
    for (const route of matrixRoutes().filter(({ by }) => by === "browser")) {
      const path = route.path.replace(/\{(\w+)\}/g, (_, name) => places[name]);
      const answer = route.method === "GET" ? await caller.get(path) : await caller.post(path);
      out.push(is(answer, 401, "sign-in-needed").replace(/^./, `${what}, ${route.name}: $&`));
    }
  };
  const left = await begin();
  await left.post("/api/sign-out");
  await dead("after sign-out", left);
  // Setting up a second factor ends the others; a new sign-in in the same browser ends its old session.
  const [one, other] = [await begin(), await begin()];
  const { json: factor } = await one.post("/api/second-factor/begin");
  const authenticator = new Authenticator(factor.secret);
  const kept = await one.post("/api/second-factor", { secret: factor.secret, code: await authenticator.next() });
  await dead("after a second factor was set up elsewhere", other);
  await dead("the session from before the second factor", one);
  const strong = one.as({ cookie: cookieOf(kept) });
  const elsewhere = await begin();
  out.push(that((await strong.post("/api/sessions/end-others")).json.ended === 1, "not one other ended"));
  await dead("after 'end the others'", elsewhere);
  const again = await strong.post("/api/sign-in", { sign_in: "short-lived", password });
  await dead("after another sign-in in the same browser", strong);
  const last = strong.as({ cookie: cookieOf(again) });
  const { caller: device } = await pair(lead, people, added.json.account);
  out.push(is(await last.get("/api/me"), 200), is(await device.get("/api/device/squads"), 200));
  await lead.post(`/api/accounts/${added.json.account}/end`);
  await dead("after the account's end", last);
  out.push(is(await device.get("/api/device/squads"), 401, "revoked"), is(await device.post("/api/sync", { client: 1 }), 401, "revoked"), is(await tryIn(people.nobody(), "short-lived", password), 401, "sign-in-failed"));
  return all(out);
}

const kTries = 30;
const kFewer = 16;  // of the two that differ in no work from nobody
// Apart by more than a machine that others use makes of it: a check left out would be a whole hash apart.
const kMostMilliseconds = 12;
const kMostShare = 0.15;
const kMostShareOfFewer = 0.3;

// Nobody, somebody with a wrong password, an account that ended and one without a password: one answer, one time.
async function nobodyKnows({ people }) {
  const lead = await people.signIn("lead");
  const added = await lead.post("/api/accounts", { sign_in: "ended", name: "X", role: "coach" });
  await lead.post("/api/accounts", { sign_in: "without", name: "X", role: "coach" });
  await people.nobody().post("/api/activate", { link: added.json.link, password: "seventeen grey gulls" });
  await lead.post(`/api/accounts/${added.json.account}/end`);
  const names = { "nobody-of-that-name": "wrong", coach: "wrong", ended: "seventeen grey gulls", without: "wrong" };
  const times = Object.fromEntries(Object.keys(names).map((name) => [name, []]));
  const answers = new Set();
  for (let i = 0; i < kTries; i++) {
    // Another one first each time.
    for (const [name, password] of [...Object.entries(names).slice(i % 4), ...Object.entries(names).slice(0, i % 4)]) {
      if (i >= kFewer && (name === "ended" || name === "without")) continue;
      const caller = people.nobody();
      await caller.get("/health");
      const from = performance.now();
      const answer = await tryIn(caller, name, password);
      times[name].push(performance.now() - from);
      const shape = [answer.status, answer.text, ...answer.raw.filter((one, index) => index % 2 === 1 && one !== answer.headers.date), Object.keys(answer.headers)];
      answers.add(JSON.stringify(shape));
      caller.close();
    }
  }
  // The median where there are enough tries for it; else the lower quarter, which a busy machine moves least.
  const at = (list, share) => [...list].sort((a, b) => a - b)[Math.floor(share * list.length)];
  const [nobody] = Object.values(times);
  const apart = Object.fromEntries(Object.entries(times).map(([name, list]) => [name, list.length < kTries ? at(list, 0.25) - at(nobody.slice(0, kFewer), 0.25) : at(list.map((one, round) => one - nobody[round]), 0.5)]));
  const medians = Object.entries(times).map(([name, list]) => `${name} ${at(list, 0.5).toFixed(0)} ms`).join(", ");
  return { detail: all(that(answers.size === 1, `${answers.size} answers: ${[...answers].join("\n")}`), that(Object.entries(apart).every(([name, one]) => Math.abs(one) < Math.max(kMostMilliseconds, at(nobody, 0.5) * (times[name].length < kTries ? kMostShareOfFewer : kMostShare))), `apart by ${JSON.stringify(apart)}`)),
    note: `medians ${medians}; apart by ${Object.values(apart).map((one) => one.toFixed(1)).join(", ")} ms` };
}

// Many at once: the hashes take turns, memory stays in bounds, and a device is served all the while.
async function manyAtOnce({ people, server, long }) {
  const count = long ? 300 : 30;
  const device = people.device("coach");
  await device.get("/api/device/squads");
  let most = 0;
  const timer = setInterval(() => (most = Math.max(most, server.residentMebibytes())), 20);
  const asked = Array.from({ length: count }, (_, i) => tryIn(people.nobody(), `nobody-${i}`, "wrong"));
  const times = [];
  for (let i = 0; i < 10; i++) {
    const from = performance.now();
    await device.get("/api/device/squads");
    times.push(performance.now() - from);
  }
  const heard = statuses(await Promise.all(asked));
  clearInterval(timer);
  times.sort((a, b) => a - b);
  return { detail: all(that(heard.every((one) => [401, 503].includes(one)), `${heard}`), that(most < 300, `${most} MiB`), that(times[9] < 1000, `a device waits ${times[9]} ms`)), note: `${count} at once: at most ${most.toFixed(0)} MiB; a device beside them waits ${times[5].toFixed(0)} ms, at most ${times[9].toFixed(0)} ms` };
}

export const signIn = [
  withServer("200 wrong passwords from one address", guessing, { waits: true }),
  withServer("one address, many names", manyNames),
  withServer("one network with many addresses, one name", wholeNetwork),
  withServer("many addresses, one name", manyAddresses, { long: true }),
  withServer("where somebody says they come from does not count", forwarded),
  { name: "sign-in: X-Forwarded-For without a proxy does not count", run: withoutProxy },
  withServer("a code is good once", codesOnce),
  withServer("a session that ended is dead everywhere", deadSessions),
  withServer("nobody and a wrong password are the same", nobodyKnows),
  withServer("many at once", manyAtOnce),
];
