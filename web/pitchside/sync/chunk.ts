// How much of the outbox goes in one request: in order, by number and by size. The server takes 500 entries and 1 MiB.
import type { Waiting } from "../keep/form.ts";

export const kMostEntries = 500;
const kMostBytes = 900_000;

const bytesOf = (row: Waiting): number => new TextEncoder().encode(JSON.stringify(row.entry)).length + 1;

// most: fewer than usual, after the server found it too much. At least one, if there is one.
export function chunkOf(rows: Waiting[], most: number): Waiting[] {
  let bytes = 0;
  const out: Waiting[] = [];
  for (const row of rows) {
    bytes += bytesOf(row);
    if (out.length >= most || (out.length > 0 && bytes > kMostBytes)) break;
    out.push(row);
  }
  return out;
}
