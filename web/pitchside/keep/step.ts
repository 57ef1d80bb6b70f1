// The one way in which anything is kept: the evening's new state and the entries it made, in one transaction. Sealing
// takes longer than a transaction stays open, so numbers and ids are thought out and everything is sealed first; the
// transaction writes it only where the device still stands where it stood then, and else all is done anew.
import type { Drawer } from "./drawer.ts";
import type { Entry, NewEntry } from "./entry.ts";
import { stampOf } from "./entry.ts";
import { idAfter } from "../../shared/entry/entry_id.ts";
import { type DeviceRow, type EveningRow, kDevice, type OpenRow, type OutboxRow, type PocketDatabase } from "./form.ts";
import { isFull, makeRoom } from "./room.ts";

export type Refusal = "no-room" | "other-tab" | "not-paired" | "disk" | "locked";
// until: how long the evening keeps the app open.
export type Kept = { kept: true; entries: Entry[]; until: number | undefined } | { kept: false; why: Refusal };
export type HoldsUntil = (state: unknown) => number | undefined; // milliseconds
export interface StepAt {
  token: string; // the writer's
  now: () => Date;
  drawer: Drawer;
  people: CryptoKey;
  holdsUntil: HoldsUntil;
}

type StateOf = (made: Entry[]) => unknown;

class Refused extends Error {
  constructor(readonly why: Refusal) {
    super(why);
  }
}
class Moved extends Error {} // the numbers have gone on meanwhile

interface Sealed {
  after: DeviceRow; // with the numbers given out
  from: { sequence: number; last_id: string | undefined };
  made: Entry[];
  outbox: OutboxRow[];
  evening: EveningRow;
  until: number | undefined;
}

function mayWrite(device: DeviceRow | undefined, at: StepAt): DeviceRow {
  if (!device || device.standing === "revoked") throw new Refused("not-paired");
  if (device.writer !== at.token) throw new Refused("other-tab");
  return device;
}

async function sealed(database: PocketDatabase, at: StepAt, key: string, state: unknown, entries: NewEntry[]): Promise<Sealed> {
  const device = mayWrite(await database.get("device", kDevice), at);
  const from = { sequence: device.next_sequence, last_id: device.last_id };
  const now = at.now();
  const made: Entry[] = entries.map((entry) => {
    device.last_id = idAfter(device.last_id, now.getTime());
    return { ...entry, id: device.last_id, sequence: device.next_sequence++, device_time: stampOf(now) };
  });
  const value = typeof state === "function" ? (state as StateOf)(made) : state;
  const outbox = await Promise.all(made.map((entry) => at.drawer.outboxRow(entry)));
  const evening = await at.drawer.eveningRow(key, value, now.getTime(), at.people);
  return { after: device, from, made, outbox, evening, until: at.holdsUntil(value) };
}

async function write(database: PocketDatabase, at: StepAt, { after, from, outbox, evening, until }: Sealed): Promise<void> {
  const transaction = database.transaction(["device", "outbox", "evening", "keys"], "readwrite", { durability: "strict" });
  const settled = transaction.done.catch((error: unknown) => error ?? transaction.error);
  try {
    const devices = transaction.objectStore("device");
    const keys = transaction.objectStore("keys");
    const device = mayWrite(await devices.get(kDevice), at);
    if (device.next_sequence !== from.sequence || device.last_id !== from.last_id) throw new Moved();
    const opened = (await keys.get("open")) as OpenRow | undefined;
    const rows = transaction.objectStore("outbox");
    const writes: Promise<unknown>[] = outbox.map((row) => rows.add(row));
    // The rest of the row may have changed meanwhile: what the server said last.
    if (outbox.length > 0) writes.push(devices.put({ ...device, next_sequence: after.next_sequence, last_id: after.last_id! }, kDevice));
    writes.push(transaction.objectStore("evening").put(evening));
    if (until !== undefined && opened?.until !== until) writes.push(keys.put({ key: at.people, evening: evening.key, until }, "open"));
    if (until === undefined && opened?.evening === evening.key) writes.push(keys.delete("open"));
    await Promise.all(writes);
    const error = await settled; // the complete event: from here on it is on the disk
    if (error) throw error;
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
      const step = await sealed(database, at, key, state, entries);
      await write(database, at, step);
      return { kept: true, entries: step.made, until: step.until };
    } catch (error) {
      if (error instanceof Moved) continue;
      if (error instanceof Refused) return { kept: false, why: error.why };
      if (!(error instanceof DOMException) || error.name === "DataCloneError") throw error; // a mistake of ours
      if (!isFull(error)) return { kept: false, why: "disk" };
      const room = await makeRoom(database, key).catch(() => false);
      if (!room) return { kept: false, why: "no-room" };
    }
  }
}
