// Takes the server's verdicts into the books of the phone, all of an answer in one transaction.
import type { Drawer } from "./drawer.ts";
import { kDevice, type PocketDatabase, type ToldRow, type VerdictWord, type Waiting } from "./form.ts";
import { kWhole, wipePeople } from "./leave.ts";

export interface Verdict {
  verdict: VerdictWord;
  why?: string;
}

export interface Heard {
  device: string; // that asked; paired anew it is another
  rows: Waiting[]; // what was sent
  verdicts: Verdict[]; // one for each
  now: number; // by the server's clock
  ledger: string;
  after: number;
  beginAnew: boolean;
  revoked: boolean;
}

const kTold: readonly VerdictWord[] = ["other-content", "kept-aside", "no-consent"];
const kNothingKept: readonly VerdictWord[] = ["no-consent", "dropped"]; // by the server, so neither here

// What the owner must hear, sealed before the transaction is opened.
async function toldRows(drawer: Drawer, { rows, verdicts }: Heard): Promise<Map<number, ToldRow>> {
  const out = new Map<number, ToldRow>();
  for (const [index, { sequence, entry }] of rows.entries()) {
    const { verdict, why } = verdicts[index]!;
    if (!kTold.includes(verdict)) continue;
    const gone = kNothingKept.includes(verdict);
    out.set(sequence, await drawer.toldRow({ sequence, verdict, kind: entry.kind, ...(why === undefined ? {} : { why }), ...(gone ? {} : { entry }), seen: false }));
  }
  return out;
}

// Nothing is done where the device was paired anew meanwhile: the verdicts stand, and are heard again as 'known'.
export async function takeVerdicts(database: PocketDatabase, drawer: Drawer, heard: Heard): Promise<void> {
  const rows = await toldRows(drawer, heard);
  const transaction = database.transaction([...kWhole], "readwrite", { durability: "strict" });
  const devices = transaction.objectStore("device");
  const outbox = transaction.objectStore("outbox");
  const acknowledged = transaction.objectStore("acknowledged");
  const told = transaction.objectStore("told");
  const device = await devices.get(kDevice);
  if (device?.device === heard.device) {
    if (heard.beginAnew) {
      // The server has another past: what it acknowledged goes back to wait, in its old order.
      for (const { sequence, sealed } of await acknowledged.getAll()) await outbox.put({ sequence, sealed });
      await acknowledged.clear();
    }
    for (const [index, { sequence }] of heard.rows.entries()) {
      const { verdict } = heard.verdicts[index]!;
      const row = await outbox.get(sequence);
      await outbox.delete(sequence);
      if (row && !kNothingKept.includes(verdict)) await acknowledged.put({ ...row, heard: heard.now });
      const said = rows.get(sequence);
      if (!said) continue;
      const before = await told.get(sequence);
      await told.put({ ...said, seen: before?.verdict === verdict && before.seen });
    }
    await devices.put({ ...device, standing: "paired", ledger: heard.ledger, after: heard.after, contact: heard.now }, kDevice);
    if (heard.revoked) await wipePeople(transaction);
  }
  await transaction.done;
}
