// The phone's data at rest: what lies in the browser's files, the lock and its codes, a lock while a session runs, and an
// older form of the database.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { all, kDay, kSession, that } from "../serve/expect.mjs";
import { keepPackage, later, packageOf, tap } from "./kept.mjs";
import { kCode, onPhone } from "./paired.mjs";
import { loadTypescript } from "./typescript.mjs";

const kName = "Wilhelmina Testperson";
const kNote = "Her mother called about the left knee";
const kHome = { player: "Q01", guardian: "Folake Testguardian", phone: "020 7946 0101" };
const kVenue = { name: "Quillmere Road", emergency_number: "112", address: "Quillmere Road 4", roles: { calls: "The recorder" } };

const state = (page) => page.evaluate(() => window.lane.keep.lock.state.value);
const unlock = (page, code = kCode) => page.evaluate((word) => window.lane.keep.lock.unlock(word), code);
const lockNow = (page) => page.evaluate(() => window.lane.keep.lockNow());
const running = (more = {}) => ({ screen: "run", run: { began: Date.now(), ends: Date.now() + 1200e3 }, ...more });
const keepState = (page, value, entries = []) => page.evaluate(([one, made]) => window.lane.keep.step("evening", one, made), [value, entries]);

function* files(folder) {
  for (const one of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, one.name);
    if (one.isDirectory()) yield* files(path);
    else if (one.isFile()) yield path;
  }
}

// As it is and as the browser writes strings that are not of Latin letters.
function lies(folder, text) {
  const forms = [Buffer.from(text, "utf8"), Buffer.from(text, "utf16le")];
  return [...files(folder)].filter((path) => {
    const bytes = readFileSync(path);
    return forms.some((form) => bytes.includes(form));
  });
}

async function onDisk(set) {
  const { phone, page } = set;
  const secret = (await set.books()).device.secret;
  const one = packageOf("u13-kestrels", later(24), { action_plans: [{ strip: "grass", venue: kVenue }], emergency: [kHome] });
  await keepPackage(page, one);
  await keepState(page, running({ note: kNote, plan: { who: kName } }), [{ kind: "wrap-up", ...kSession, happened: "held", note: kNote }]);
  const ids = await page.evaluate(() => window.lane.keep.outbox(5));
  // What is looked for is found where it lies in the clear: the browser packs nothing so that it cannot be seen.
  await page.evaluate(async () => {
    const database = await new Promise((resolve) => {
      const request = indexedDB.open("a-clear-one", 1);
      request.onupgradeneeded = () => request.result.createObjectStore("rows");
      request.onsuccess = () => resolve(request.result);
    });
    const transaction = database.transaction("rows", "readwrite", { durability: "strict" });
    transaction.objectStore("rows").put({ name: "Clarissa Canary", secret: "c4narySecretC4narySecretC4narySecretC4nary1" }, 1);
    await new Promise((resolve) => (transaction.oncomplete = resolve));
  });
  const packed = await page.evaluate(() => window.lane.dump());
  await phone.kill();
  const out = ["Clarissa Canary", "c4narySecretC4narySecretC4narySecretC4nary1"].map((text) => that(lies(phone.folder, text).length > 0, `'${text}' is not found where it lies in the clear`));
  for (const text of [kName, "Wilhelmina", kNote, "left knee", secret, kVenue.address, kHome.guardian, kHome.phone, "The recorder", "wrap-up"]) {
    out.push(that(lies(phone.folder, text).length === 0, `'${text}' lies in ${lies(phone.folder, text)}`));
  }
  out.push(that(!packed.includes(kName) && !packed.includes("knee") && !packed.includes(secret), "a row has it in the clear"), that(ids[0].entry.note === kNote, JSON.stringify(ids)));
  await phone.open();
  return all(out);
}

// Every byte of what is sealed counts, and none opens in another's place.
async function tampered(set) {
  const { page } = set;
  await tap(page, 2);
  const said = await page.evaluate(async () => {
    const open = () => window.lane.keep.outbox(5).then(() => "opened", () => "refused");
    const database = await new Promise((resolve) => {
      const request = indexedDB.open("lanework");
      request.onsuccess = () => resolve(request.result);
    });
    const done = (request) => new Promise((resolve) => (request.onsuccess = () => resolve(request.result)));
    const rows = () => database.transaction("outbox", "readwrite").objectStore("outbox");
    const [first, second] = await done(rows().getAll());
    const out = { before: await open(), flips: 0, refused: 0 };
    for (const part of ["nonce", "bytes"]) {
      for (let at = 0; at < first.sealed[part].length; at++) {
        const bytes = first.sealed[part].slice();
        bytes[at] ^= 1;
        await done(rows().put({ ...first, sealed: { ...first.sealed, [part]: bytes } }));
        out.flips++;
        if ((await open()) === "refused") out.refused++;
      }
    }
    await done(rows().put({ ...first, sealed: second.sealed }));
    out.swapped = await open();
    await done(rows().put(first));
    out.after = await open();
    const taken = await done(database.transaction("keys").objectStore("keys").get("device"));
    out.taken = await crypto.subtle.exportKey("raw", taken).then(() => "taken out", (error) => error.name);
    database.close();
    return out;
  });
  return all(that(said.before === "opened" && said.after === "opened" && said.swapped === "refused", JSON.stringify(said)), that(said.flips > 100 && said.refused === said.flips, JSON.stringify(said)), that(said.taken === "InvalidAccessError", `the device's key: ${said.taken}`));
}

// A locked phone reads nothing, keeps nothing, and delivers all the same.
async function locked(set) {
  const { phone, way, page } = set;
  await keepPackage(page, packageOf("u13-kestrels", later(24), { action_plans: [{ strip: "grass", venue: kVenue }], emergency: [kHome] }));
  await keepState(page, { note: kNote });
  way.set("cut");
  await tap(page, 2);
  await lockNow(page);
  const reads = () => page.evaluate(async () => ({ packages: await window.lane.keep.packages(), evening: await window.lane.keep.evening("evening"), safety: await window.lane.keep.safety() }));
  const read = await reads();
  const refused = (await keepState(page, {})).why;
  const out = [that((await state(page)) === "locked", await state(page)), that(read.packages.length === 0 && read.evening === undefined, JSON.stringify(read)), that(refused === "locked", refused)];
  out.push(that(read.safety[0]?.action_plans[0].venue.emergency_number === "112" && !/Wilhelmina|Folake/.test(JSON.stringify(read.safety)), JSON.stringify(read.safety)));
  const open = JSON.parse(await page.evaluate(async () => JSON.stringify(JSON.parse(await window.lane.dump()).keys.length)));
  out.push(that(open === 2, `${open} rows of keys: more than the device's own and the one that is sealed`));
  way.set("says", { path: /evenings$/, status: 404, body: { error: "not-found", what: "." } });
  const asked = way.seen.length;
  await page.evaluate(() => window.lane.sync.sendNow());
  const books = await set.books();
  out.push(that(books.waiting === 0 && books.trouble === undefined, JSON.stringify(books)), that(way.seen.slice(asked).every(({ path }) => !/evenings$/.test(path)), "names were fetched by a locked phone"), that((await set.seen()).size === 2, "not delivered"));
  out.push(that((await unlock(page)).opened, "the code does not open it"));
  const after = await reads();
  out.push(that(after.evening?.note === kNote, JSON.stringify(after)));
  // Opened, but with no session running, the key is in no file: a phone that dies is locked.
  await phone.kill();
  await phone.open();
  const again = await phone.lane(way.url);
  const first = await again.evaluate(() => window.laneState);
  out.push(that(first === "locked", `${first} after a dead battery`));
  return all(out);
}

async function wrongCodes(set) {
  const { page } = set;
  await keepPackage(page, packageOf("u13-kestrels", later(24)));
  await tap(page, 2);
  await lockNow(page);
  const shift = (milliseconds) => page.evaluate((by) => window.lane.shiftClock(by), milliseconds);
  const out = [];
  for (let i = 1; i <= 4; i++) out.push(await unlock(page, "000000"));
  const faults = [that(out.every((one) => !one.opened && one.wait === 0) && out[3].left === 16, JSON.stringify(out))];
  faults.push(that((await unlock(page)).opened, "the right one after four wrong ones"));
  await lockNow(page);
  for (let i = 1; i <= 5; i++) await unlock(page, "000000");
  const early = await unlock(page);
  faults.push(that(!early.opened && early.wait > 25e3 && early.wait <= 30e3, JSON.stringify(early)), that((await state(page)) === "locked", "it opened"));
  await shift(-3 * 86400e3); // a clock put back makes no wait of days
  const back = await unlock(page);
  faults.push(that(!back.opened && back.wait === 15 * 60e3, JSON.stringify(back)));
  // The rule itself over all twenty; the last ones here, for each is stretched as in life.
  const { waitAfter } = await loadTypescript("keep/code.ts");
  const waits = Array.from({ length: 20 }, (_, index) => waitAfter(index + 1) / 1000);
  faults.push(that(waits.join() === "0,0,0,0,30,60,120,240,480,900,900,900,900,900,900,900,900,900,900,900", waits.join()));
  await page.evaluate(async () => {
    const done = (request) => new Promise((resolve) => (request.onsuccess = () => resolve(request.result)));
    const database = await done(indexedDB.open("lanework"));
    const keys = database.transaction("keys", "readwrite").objectStore("keys");
    await done(keys.put({ ...(await done(keys.get("lock"))), tries: 18, not_before: 0 }, "lock"));
    database.close();
  });
  const clock = 16 * 60e3;
  await shift(0);
  const nineteenth = await unlock(page, "000000");
  await shift(clock);
  const last = await unlock(page, "000000");
  faults.push(that(nineteenth.left === 1 && nineteenth.wait === 15 * 60e3 && last.left === 0, JSON.stringify([nineteenth, last])));
  await shift(clock + 3600e3);
  const gone = await unlock(page);
  const rows = JSON.parse(await page.evaluate(() => window.lane.dump()));
  faults.push(that((await state(page)) === "gone" && !gone.opened, await state(page)), that(rows.package.length === 0 && rows.evening.length === 0 && rows.outbox.length === 2, "names stay, or entries went"));
  await shift(0);
  const books = await set.run();
  faults.push(that(books.waiting === 0, JSON.stringify(books)));
  return all(faults);
}

// The code forgotten: a new link, another code; numbers go on and what waits is delivered.
async function forgotten(set) {
  const { page, way, device } = set;
  await keepPackage(page, packageOf("u13-kestrels", later(24)));
  way.set("cut");
  await tap(page, 3);
  await lockNow(page);
  const { secret } = (await set.books()).device;
  await page.evaluate(([word, id]) => window.lane.keep.paired(word, id), [secret, device]);
  const out = [that((await state(page)) === "unset", await state(page))];
  const rows = JSON.parse(await page.evaluate(() => window.lane.dump()));
  out.push(that(rows.package.length === 0 && rows.evening.length === 0 && rows.outbox.length === 3, JSON.stringify(Object.entries(rows).map(([name, list]) => [name, list.length]))));
  const weak = await page.evaluate(() => window.lane.keep.lock.choose("123456").then(() => "chosen", () => "refused"));
  await page.evaluate(() => window.lane.keep.lock.choose("a phrase of mine"));
  way.set("through");
  const [fourth] = await tap(page);
  const books = await set.run();
  out.push(that(weak === "refused", weak), that(fourth.entries?.[0].sequence === 4 && books.waiting === 0 && (await set.seen()).size === 4, JSON.stringify([fourth, books])));
  await lockNow(page);
  out.push(that(!(await unlock(page)).opened && (await unlock(page, " a phrase of mine ")).opened, "the old code opens it, or the new one does not"));
  return all(out);
}

// A session holds it open over a dead battery, half an hour over its slot and no longer.
async function session(set) {
  const { phone, way, page } = set;
  const bare = async () => {
    const one = await phone.page(way.url);
    await one.waitForFunction(() => window.lane ?? window.laneFault);
    return one;
  };
  const first = (of) => of.evaluate(() => window.laneState);
  await keepState(page, running({ at: 7 }));
  await phone.kill();
  await phone.open();
  let again = await bare();
  const out = [that((await first(again)) === "open" && (await again.evaluate(() => window.lane.keep.evening("evening"))).at === 7, `${await first(again)} after a dead battery`)];
  out.push(that(!(await again.evaluate(() => window.lane.keep.lock.mayClose)), "it may lock while a session runs"));
  await again.evaluate(() => window.lane.shiftClock(49 * 60e3));
  out.push(that(!(await again.evaluate(() => window.lane.keep.lock.mayClose)), "it may lock before half an hour is over"));
  await again.evaluate(() => window.lane.shiftClock(51 * 60e3));
  out.push(that(await again.evaluate(() => window.lane.keep.lock.mayClose), "a session that nobody ended holds it for ever"));
  await again.evaluate(() => window.lane.shiftClock(0));
  await keepState(again, { ...running(), screen: "finished" });
  const rows = JSON.parse(await again.evaluate(() => window.lane.dump()));
  out.push(that(rows.keys.length === 2, `${rows.keys.length} rows of keys after the session`));
  await keepState(again, { screen: "run", run: { began: Date.now() - 7200e3, ends: Date.now() - 3600e3 } });
  await phone.kill();
  await phone.open();
  again = await bare();
  const late = JSON.parse(await again.evaluate(() => window.lane.dump()));
  out.push(that((await first(again)) === "locked" && late.keys.length === 2, `${await first(again)}, ${late.keys.length} rows of keys, an hour after the slot`));
  return all(out);
}

// Whoever knows the code changes it: everything stays, and the old one opens nothing any more.
async function changed(set) {
  const { phone, way, page } = set;
  const kNew = "a phrase of mine";
  const change = (old, fresh) => page.evaluate(([one, other]) => window.lane.keep.lock.change(one, other).catch((error) => error.message), [old, fresh]);
  await keepPackage(page, packageOf("u13-kestrels", later(24)));
  await keepState(page, running({ note: kNote }));
  const before = JSON.parse(await page.evaluate(() => window.lane.dump()));
  const wrong = await change("000000", kNew);
  const out = [that(!wrong.opened && wrong.left === 19, JSON.stringify(wrong)), that((await state(page)) === "open", "a wrong code closed it")];
  out.push(that(/no code/.test(await change(kCode, "111111")), "a weak one was taken"));
  // Whatever fails while it is written, the old one is the code.
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    let puts = 0;
    IDBObjectStore.prototype.put = function (...words) {
      if (words[1] === "lock" && ++puts === 2) throw new DOMException("full", "QuotaExceededError");
      return put.apply(this, words);
    };
  });
  out.push(that(/full/.test(await change(kCode, kNew)), "it did not fail"));
  out.push(that((await change(kCode, kNew)).opened, "the code was not changed"), that((await state(page)) === "open", await state(page)));
  const after = JSON.parse(await page.evaluate(() => window.lane.dump()));
  out.push(that(JSON.stringify([before.package, before.evening]) === JSON.stringify([after.package, after.evening]), "what lies under the code was touched"));
  // A session that runs goes on over a dead battery, as before.
  await phone.kill();
  await phone.open();
  const again = await phone.page(way.url);
  await again.waitForFunction(() => window.lane ?? window.laneFault);
  out.push(that((await again.evaluate(() => window.laneState)) === "open", "the session was locked"));
  await lockNow(again);
  out.push(that(!(await unlock(again)).opened, "the old code opens it"), that((await unlock(again, kNew)).opened, "the new code does not open it"));
  out.push(that((await again.evaluate(() => window.lane.keep.evening("evening"))).note === kNote, "the evening went"));
  return all(out);
}

// Killed in the middle of it: one of the two codes opens the phone, and never both.
async function killedInChange(set) {
  const { phone, way } = set;
  let { page } = set;
  await keepState(page, { note: kNote });
  let [code, fresh] = [kCode, "730164"];
  const out = [];
  for (const milliseconds of [0, 150, 300, 450, 600, 750, 900, 1050]) {
    await page.evaluate(([old, other]) => void window.lane.keep.lock.change(old, other).then(() => console.log("changed"), () => undefined), [code, fresh]);
    await page.waitForTimeout(milliseconds);
    await phone.kill();
    await phone.open();
    page = await phone.page(way.url);
    await page.waitForFunction(() => window.lane ?? window.laneFault);
    await lockNow(page);
    const opens = [];
    for (const one of [code, fresh]) {
      if ((await unlock(page, one)).opened) opens.push(one);
      await lockNow(page);
    }
    out.push(that(opens.length === 1, `${milliseconds} ms: ${opens.length} of the two codes open it`));
    if (opens[0] === fresh) [code, fresh] = [fresh, code];
    await unlock(page, code);
    out.push(that((await page.evaluate(() => window.lane.keep.evening("evening")))?.note === kNote, `${milliseconds} ms: the evening went`));
  }
  return all(out);
}

// In two tabs: the one that is behind opens by itself, a lock by hand is a lock in both.
async function tabs(set) {
  const { phone, way, page } = set;
  const other = await phone.page(way.url);
  await other.waitForFunction(() => window.lane);
  const out = [that((await other.evaluate(() => window.laneState)) === "locked", "another tab opened without the code")];
  await lockNow(page);
  await other.waitForFunction(() => window.lane.keep.lock.state.value === "locked", undefined, { timeout: 3000 });
  await unlock(other);
  out.push(that((await state(other)) === "open" && (await state(page)) === "locked", `${await state(other)}, ${await state(page)}`));
  // One that runs a session is not put to sleep by the other one.
  await unlock(page);
  await keepState(page, running());
  await other.waitForTimeout(100);
  await other.evaluate(() => window.lane.keep.sawTold(1));
  out.push(that(!(await other.evaluate(() => window.lane.keep.lock.mayClose)), "the other tab may lock"));
  return all(out);
}

export const locks = [
  onPhone("what lies in the browser's files has no name, note or secret in the clear", onDisk),
  onPhone("a sealed row that was changed, or put in another's place, does not open", tampered),
  onPhone("a locked phone reads and keeps nothing, and delivers", locked),
  onPhone("wrong codes wait, and the twentieth is the last", wrongCodes),
  onPhone("a forgotten code: paired anew, nothing that waits is lost", forgotten),
  onPhone("a session that runs holds the app open, and no longer than it may", session),
  onPhone("the code is changed: nothing else changes, and the old one opens nothing", changed),
  { ...onPhone("killed while the code is changed: one of the two opens it", killedInChange), long: true },
  { ...onPhone("two tabs and one lock", tabs), long: true },
];
