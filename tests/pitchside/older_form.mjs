// A phone whose database is of form 1, where everything lay in the clear: brought to form 2 whole, or left as it was.
import { all, kDay, kSession, that } from "../serve/expect.mjs";
import { later, packageOf } from "./kept.mjs";
import { kCode, onPhone } from "./paired.mjs";

const kName = "Wilhelmina Testperson";
export const entryOf = (sequence) => ({ kind: "drill-marked", ...kSession, drill: `drill-${sequence}`, mark: "done", id: `019b1c2e-7d40-7a31-8c55-0f3a51b2c6d${sequence}`, sequence, device_time: `${new Date().toISOString().slice(0, 19)}Z` });

// As keep/form.ts of form 1 wrote it.
export async function writeForm1(page, rows) {
  await page.evaluate(async (all) => {
    const done = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    await done(indexedDB.deleteDatabase("lanework"));
    const request = indexedDB.open("lanework", 1);
    request.onupgradeneeded = () => {
      for (const [name, keyPath] of [["outbox", "sequence"], ["acknowledged", "sequence"], ["told", "sequence"], ["package", "squad"], ["evening", "key"]]) request.result.createObjectStore(name, { keyPath });
      request.result.createObjectStore("device");
      request.result.createObjectStore("claim");
    };
    const database = await done(request);
    const names = Object.keys(all);
    const transaction = database.transaction(names, "readwrite");
    for (const name of names) for (const row of all[name]) name === "device" ? transaction.objectStore(name).put(row, "device") : transaction.objectStore(name).put(row);
    await new Promise((resolve) => (transaction.oncomplete = resolve));
    database.close();
  }, rows);
}

export const readAll = (page) => page.evaluate(async () => {
  const done = (request) => new Promise((resolve) => (request.onsuccess = () => resolve(request.result)));
  const database = await done(indexedDB.open("lanework"));
  const out = { version: database.version };
  for (const name of database.objectStoreNames) out[name] = await done(database.transaction(name).objectStore(name).getAll());
  database.close();
  return JSON.stringify(out);
});

export const rowsOfForm1 = (secret, device) => ({
  outbox: [4, 5].map((sequence) => ({ sequence, entry: entryOf(sequence) })),
  acknowledged: [{ sequence: 3, entry: entryOf(3), heard: Date.now() }],
  told: [{ sequence: 2, verdict: "kept-aside", kind: "wrap-up", why: "the squad is not yours", seen: false }],
  package: [{ squad: "u13-kestrels", package: packageOf("u13-kestrels", later(24)), fetched: 1 }],
  evening: [{ key: "evening", state: { count: 5, who: kName }, touched: 1 }],
  device: [{ secret, device, standing: "paired", next_sequence: 6, last_id: entryOf(5).id, after: 0, ledger: "x" }],
});

// What a phone of form 1 held, of a device that the server knows.
async function older(set) {
  const { phone, page, way } = set;
  const { secret, device } = (await set.books()).device;
  await page.close();
  const bare = await phone.page(`${way.url}/manifest.webmanifest`);
  const rows = rowsOfForm1(secret, device);
  await writeForm1(bare, rows);
  return { bare, rows, secret };
}

async function brought(set) {
  const { phone, way } = set;
  const { bare, secret } = await older(set);
  await bare.close();
  const page = await phone.lane(way.url);
  const out = [that((await page.evaluate(() => window.laneState)) === "unset", "a code was there before one was chosen")];
  const text = await readAll(page);
  const held = JSON.parse(text);
  out.push(that(held.version === 2 && !text.includes("Wilhelmina") && !text.includes(secret) && !text.includes("drill-4") && !text.includes("not yours"), text.slice(0, 400)));
  await page.evaluate((code) => window.lane.keep.lock.choose(code), kCode);
  const books = await set.books(page);
  const [evening, packages] = await page.evaluate(async () => [await window.lane.keep.evening("evening"), await window.lane.keep.packages()]);
  out.push(that(books.waiting === 2 && books.told[0]?.why === "the squad is not yours" && books.device.secret === secret, JSON.stringify(books)), that(evening?.count === 5 && packages[0]?.package.roster[0].name === kName, JSON.stringify([evening, packages.length])));
  const made = await page.evaluate((day) => window.lane.tap(day), kDay);
  const sent = await set.run(page);
  out.push(that(made.entries?.[0].sequence === 6 && sent.waiting === 0, JSON.stringify([made, sent])), that((await set.seen()).size === 3 + 1, `${(await set.seen()).size} came, of the two that waited, the one of before that a new ledger asks for, and one more`));
  const keys = JSON.parse(await readAll(page)).keys.length;
  out.push(that(keys === 2, `${keys} rows of keys once a code is chosen`));
  return all(out);
}

// Whatever fails in the middle, the old form stays to the byte, and what waits can be saved by hand.
async function left(set) {
  const { phone, way } = set;
  const { bare, rows } = await older(set);
  const before = await readAll(bare);
  await bare.close();
  const out = [];
  const faults = {
    writing: () => {
      const put = IDBObjectStore.prototype.put;
      let puts = 0;
      IDBObjectStore.prototype.put = function (...words) {
        if (this.transaction.mode === "versionchange" && ++puts === 4) throw new DOMException("full", "QuotaExceededError");
        return put.apply(this, words);
      };
    },
    sealing: () => {
      SubtleCrypto.prototype.encrypt = () => Promise.reject(new DOMException("no", "OperationError"));
    },
  };
  for (const [name, fault] of Object.entries(faults)) {
    const page = await phone.context.newPage();
    await page.addInitScript(fault);
    await page.goto(way.url);
    await page.waitForFunction(() => window.lane ?? window.laneFault);
    const said = await page.evaluate(() => window.laneFault);
    await page.close();
    const again = await phone.page(`${way.url}/manifest.webmanifest`);
    out.push(that(/the old form stays/.test(said), `${name}: ${said}`), that((await readAll(again)) === before, `${name}: the old form was touched`));
    await again.close();
  }
  const page = await phone.lane(way.url);
  out.push(that(JSON.parse(await readAll(page)).version === 2 && (await set.books(page)).waiting === rows.outbox.length, "it does not come to the new form afterwards"));
  return all(out);
}

export const olderForm = [
  onPhone("a database of form 1 is sealed whole, before a code is chosen and after", brought),
  onPhone("where that fails the old form stays to the byte", left),
];
