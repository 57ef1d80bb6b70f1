// What a phone forgets: all that is about people when it loses its right, and what was acknowledged long ago.
import { kDevice, type Pocket, type PocketDatabase } from "./form.ts";
import type { IDBPTransaction } from "idb";

const kDay = 86_400_000;
export const kAcknowledgedDays = 35; // a backup is at most so old when it is restored: 28 days and a margin (own judgement)

type Whole = IDBPTransaction<Pocket, ("outbox" | "acknowledged" | "told" | "package" | "evening" | "device" | "keys")[], "readwrite">;
export const kWhole = ["outbox", "acknowledged", "told", "package", "evening", "device", "keys"] as const;

// Packages, evenings and what was sent are gone at once, and the key under which they lay; the outbox goes by its
// verdicts, and the secret with its last.
export async function wipePeople(transaction: Whole): Promise<void> {
  for (const name of ["package", "evening", "acknowledged", "told"] as const) await transaction.objectStore(name).clear();
  for (const name of ["lock", "open"] as const) await transaction.objectStore("keys").delete(name);
  const devices = transaction.objectStore("device");
  const device = await devices.get(kDevice);
  if (!device) return;
  if ((await transaction.objectStore("outbox").count()) === 0) await devices.delete(kDevice);
  else await devices.put({ ...device, standing: "revoked" }, kDevice);
}

export async function wipe(database: PocketDatabase): Promise<void> {
  const transaction = database.transaction([...kWhole], "readwrite", { durability: "strict" });
  await wipePeople(transaction);
  await transaction.done;
}

// By the server's clock: a phone's that is a year ahead would throw everything away. The newest evening stays, whatever
// the phone's clock said when it was touched.
export async function dropOld(database: PocketDatabase, serverNow: number): Promise<void> {
  const transaction = database.transaction(["acknowledged", "told", "evening"], "readwrite");
  const acknowledged = transaction.objectStore("acknowledged");
  const old = (time: number): boolean => serverNow - time > kAcknowledgedDays * kDay;
  for (let cursor = await acknowledged.openCursor(); cursor; cursor = await cursor.continue()) {
    if (!old(cursor.value.heard)) continue;
    await transaction.objectStore("told").delete(cursor.value.sequence);
    await cursor.delete();
  }
  const evenings = (await transaction.objectStore("evening").getAll()).sort((a, b) => a.touched - b.touched);
  for (const { key, touched } of evenings.slice(0, -1)) {
    if (old(touched)) await transaction.objectStore("evening").delete(key);
  }
  await transaction.done;
}
