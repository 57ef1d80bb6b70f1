// Opens the database, and brings one of form 1, which lay there in the clear, to form 2. Sealing takes longer than a
// transaction stays open, so the old rows are read and sealed first; the one transaction that changes the form looks
// whether they are still the same, and the browser undoes all of it where anything fails.
import { type IDBPDatabase, openDB } from "idb";
import type { EveningPackage } from "../package/evening_package.ts";
import type { Entry } from "./entry.ts";
import { kForm, kPocket, type Pocket, type PocketDatabase } from "./form.ts";
import { safetyOf } from "./safety.ts";
import { newKey, seal } from "./seal.ts";

const kOldStores = ["outbox", "acknowledged", "told", "package", "evening", "device", "claim"] as const;
type StoreName = (typeof kOldStores)[number];
type Rows = Record<StoreName, Record<string, unknown>[]>;

// The old form stays as it was. waiting: what the club does not have yet, for a rescue by hand.
export class OldFormStays extends Error {
  constructor(readonly waiting: Entry[], cause: unknown) {
    super(`the old form stays: ${String(cause)}`);
  }
}

// A newer app has been here: this one can read none of it.
export class NewerForm extends Error {}

class Changed extends Error {}

async function rowsIn(stores: { [Name in StoreName]: { getAll(): Promise<unknown[]> } }): Promise<Rows> {
  const out: Partial<Rows> = {};
  for (const name of kOldStores) out[name] = (await stores[name].getAll()) as Record<string, unknown>[];
  return out as Rows;
}

// Nothing where there is no database of form 1.
async function oldRows(): Promise<Rows | undefined> {
  let none = false;
  const opened = openDB(kPocket, undefined, {
    upgrade(_database, _old, _new, transaction) {
      none = true;
      transaction.done.catch(() => undefined);
      transaction.abort();
    },
  });
  const database: IDBPDatabase | undefined = await opened.catch((error: unknown) => {
    if (none) return undefined;
    throw error;
  });
  if (!database) return undefined;
  try {
    if (database.version > kForm) throw new NewerForm(`form ${database.version}`);
    if (database.version !== 1) return undefined;
    const transaction = database.transaction([...kOldStores]);
    const rows = await rowsIn(Object.fromEntries(kOldStores.map((name) => [name, transaction.objectStore(name)])) as never);
    await transaction.done;
    return rows;
  } finally {
    database.close();
  }
}

interface SealedRows {
  keys: { device: CryptoKey; people: CryptoKey };
  rows: Rows;
}

async function sealedRows(old: Rows): Promise<SealedRows> {
  const device = await newKey(false);
  const people = await newKey(true); // until the first code is chosen, which seals it
  const ours = (what: string, value: unknown) => seal("device", device, what, value);
  const theirs = (what: string, value: unknown) => seal("people", people, what, value);
  const each = (name: StoreName, change: (row: never) => Promise<Record<string, unknown>>) => Promise.all(old[name].map((row) => change(row as never)));
  const rows: Rows = {
    outbox: await each("outbox", async ({ entry, ...row }: { sequence: number; entry: Entry }) => ({ ...row, sealed: await ours(`entry ${row.sequence}`, entry) })),
    acknowledged: await each("acknowledged", async ({ entry, ...row }: { sequence: number; entry: Entry }) => ({ ...row, sealed: await ours(`entry ${row.sequence}`, entry) })),
    told: await each("told", async ({ sequence, verdict, seen, ...words }: { sequence: number; verdict: string; seen: boolean }) => ({ sequence, verdict, seen, sealed: await ours(`told ${sequence}`, words) })),
    package: await each("package", async ({ package: whole, ...row }: { squad: string; package: EveningPackage }) => ({
      ...row, sealed: await theirs(`package ${row.squad}`, whole), safety: await ours(`safety ${row.squad}`, safetyOf(whole)),
    })),
    evening: await each("evening", async ({ state, ...row }: { key: string; state: unknown }) => ({ ...row, sealed: await theirs(`evening ${row.key}`, state) })),
    device: await each("device", async ({ secret, ...row }: { secret: string }) => ({ ...row, sealed: await ours("device", secret) })),
    claim: await each("claim", async ({ secret, code, claimed }: { secret: string; code: string; claimed: number }) => ({ claimed, sealed: await ours("claim", { secret, code }) })),
  };
  return { keys: { device, people }, rows };
}

function makeStores(database: IDBPDatabase<Pocket>): void {
  database.createObjectStore("outbox", { keyPath: "sequence" });
  database.createObjectStore("acknowledged", { keyPath: "sequence" });
  database.createObjectStore("told", { keyPath: "sequence" });
  database.createObjectStore("package", { keyPath: "squad" });
  database.createObjectStore("evening", { keyPath: "key" });
  database.createObjectStore("device");
  database.createObjectStore("claim");
}

async function openAs2(old: Rows | undefined, closed: () => void): Promise<PocketDatabase> {
  const sealed = old && (await sealedRows(old));
  let failed: unknown;
  const opened = openDB<Pocket>(kPocket, kForm, {
    async upgrade(database, from, _to, transaction) {
      try {
        if (from === 0) makeStores(database);
        const keys = database.createObjectStore("keys");
        if (from === 0) return;
        const stores = Object.fromEntries(kOldStores.map((name) => [name, transaction.objectStore(name)])) as never as Record<StoreName, { getAll(): Promise<unknown[]>; clear(): Promise<void>; put(row: unknown, key?: string): Promise<unknown> }>;
        if (!sealed || JSON.stringify(await rowsIn(stores)) !== JSON.stringify(old)) throw new Changed("another tab wrote meanwhile");
        for (const name of kOldStores) {
          await stores[name].clear();
          for (const row of sealed.rows[name]) await (name === "device" || name === "claim" ? stores[name].put(row, name) : stores[name].put(row));
        }
        await keys.put(sealed.keys.device, "device");
        await keys.put({ key: sealed.keys.people }, "open");
      } catch (error) {
        failed = error;
        transaction.done.catch(() => undefined);
        transaction.abort();
      }
    },
    blocking(_current, _wanted, event) {
      (event.target as IDBDatabase).close(); // a newer app in another tab: this one must be loaded anew
      closed();
    },
    terminated: closed,
  });
  return opened.catch((error: unknown) => {
    throw failed ?? error;
  });
}

// Throws OldFormStays where there was an old form and it could not be changed, NewerForm where a newer app was here.
export async function openPocket(closed: () => void): Promise<PocketDatabase> {
  for (let tries = 0; ; tries++) {
    const old = await oldRows();
    try {
      return await openAs2(old, closed);
    } catch (error) {
      if (error instanceof Changed && tries < 3) continue;
      if (old) throw new OldFormStays(old.outbox.map(({ entry }) => entry as Entry), error);
      throw error;
    }
  }
}
