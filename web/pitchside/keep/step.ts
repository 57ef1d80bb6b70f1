// The one way in which anything is kept: the evening's new state and the entries it made, in one transaction.
import type { Entry, NewEntry } from "./entry.ts";
import { stampOf } from "./entry.ts";
import { idAfter } from "./entry_id.ts";
import { kDevice, type PocketDatabase } from "./form.ts";
import { isFull, makeRoom } from "./room.ts";

export type Refusal = "no-room" | "other-tab" | "not-paired" | "disk";
export type Kept = { kept: true; entries: Entry[] } | { kept: false; why: Refusal };
export interface StepAt {
  token: string; // the writer's
  now: () => Date;
}

type StateOf = (made: Entry[]) => unknown;

class Refused extends Error {
  constructor(readonly why: Refusal) {
    super(why);
  }
}

async function attempt(database: PocketDatabase, at: StepAt, key: string, state: unknown, entries: NewEntry[]): Promise<Entry[]> {
  const transaction = database.transaction(["device", "outbox", "evening"], "readwrite", { durability: "strict" });
  const settled = transaction.done.catch((error: unknown) => error ?? transaction.error);
  try {
    const devices = transaction.objectStore("device");
    const device = await devices.get(kDevice);
    if (!device || device.standing === "revoked") throw new Refused("not-paired");
    if (device.writer !== at.token) throw new Refused("other-tab");
    const now = at.now();
    const made: Entry[] = entries.map((entry) => {
      device.last_id = idAfter(device.last_id, now.getTime());
      return { ...entry, id: device.last_id, sequence: device.next_sequence++, device_time: stampOf(now) };
    });
    const value = typeof state === "function" ? (state as StateOf)(made) : state;
    const outbox = transaction.objectStore("outbox");
    const writes: Promise<unknown>[] = made.map((entry) => outbox.add({ sequence: entry.sequence, entry }));
    if (made.length > 0) writes.push(devices.put(device, kDevice));
    writes.push(transaction.objectStore("evening").put({ key, state: value, touched: now.getTime() }));
    await Promise.all(writes);
    const error = await settled; // the complete event: from here on it is on the disk
    if (error) throw error;
    return made;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It has ended by itself.
    }
    await settled;
    throw error;
  }
}

export async function keepStep(database: PocketDatabase, at: StepAt, key: string, state: unknown, entries: NewEntry[]): Promise<Kept> {
  for (;;) {
    try {
      return { kept: true, entries: await attempt(database, at, key, state, entries) };
    } catch (error) {
      if (error instanceof Refused) return { kept: false, why: error.why };
      if (!(error instanceof DOMException) || error.name === "DataCloneError") throw error; // a mistake of ours
      if (!isFull(error)) return { kept: false, why: "disk" };
      const room = await makeRoom(database, key).catch(() => false);
      if (!room) return { kept: false, why: "no-room" };
    }
  }
}
