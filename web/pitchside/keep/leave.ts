// What a phone forgets: all that is about people when it loses its right, and what was acknowledged long ago.
import { kDevice, type Pocket, type PocketDatabase } from "./form.ts";
import type { IDBPTransaction } from "idb";

const kDay = 86_400_000;
export const kAcknowledgedDays = 35; // a backup is at most so old when it is restored: 28 days and a margin (own judgement)

type Whole = IDBPTransaction<Pocket, ("outbox" | "acknowledged" | "told" | "package" | "evening" | "device")[], "readwrite">;
export const kWhole = ["outbox", "acknowledged", "told", "package", "evening", "device"] as const;

// Packages, evenings and what was sent are gone at once; the outbox goes by its verdicts, and the secret with its last.
export async function wipePeople(transaction: Whole): Promise<void> {
  for (const name of ["package", "evening", "acknowledged", "told"] as const) await transaction.objectStore(name).clear();
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

// By the server's clock: a phone's that is a year ahead would throw everything away.
export async function dropOld(database: PocketDatabase, serverNow: number): Promise<void> {
  const transaction = database.transaction("acknowledged", "readwrite");
  for (let cursor = await transaction.store.openCursor(); cursor; cursor = await cursor.continue()) {
    if (serverNow - cursor.value.heard > kAcknowledgedDays * kDay) await cursor.delete();
  }
  await transaction.done;
}
