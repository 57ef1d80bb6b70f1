// Room on a phone that is full: old packages go first, then evenings that are over, then what the server has
// acknowledged; never the outbox, and never the newest package.
import type { PocketDatabase } from "./form.ts";

const kAcknowledgedAtOnce = 200;

export const isFull = (error: unknown): boolean => error instanceof DOMException && error.name === "QuotaExceededError";

// False: there is nothing left that may go. keeping: the evening that is being written.
export async function makeRoom(database: PocketDatabase, keeping: string | undefined): Promise<boolean> {
  const packages = (await database.getAll("package")).sort((a, b) => a.fetched - b.fetched);
  const oldest = packages.length > 1 ? packages[0] : undefined;
  if (oldest) {
    await database.delete("package", oldest.squad);
    return true;
  }
  const evenings = (await database.getAll("evening")).sort((a, b) => a.touched - b.touched);
  const over = evenings.slice(0, -1).find(({ key }) => key !== keeping);
  if (over) {
    await database.delete("evening", over.key);
    return true;
  }
  const acknowledged = await database.getAllKeys("acknowledged", null, kAcknowledgedAtOnce);
  const last = acknowledged.at(-1);
  if (last === undefined) return false;
  await database.delete("acknowledged", IDBKeyRange.upperBound(last));
  return true;
}
