// Takes the server's verdicts into the books of the phone, all of an answer in one transaction.
import { kDevice, type OutboxRow, type PocketDatabase, type VerdictWord } from "./form.ts";
import { kWhole, wipePeople } from "./leave.ts";

export interface Verdict {
  verdict: VerdictWord;
  why?: string;
}

export interface Heard {
  secret: string; // with which it was asked
  rows: OutboxRow[]; // what was sent
  verdicts: Verdict[]; // one for each
  now: number; // by the server's clock
  ledger: string;
  after: number;
  beginAnew: boolean;
  revoked: boolean;
}

const kTold: readonly VerdictWord[] = ["other-content", "kept-aside", "no-consent"];
const kNothingKept: readonly VerdictWord[] = ["no-consent", "dropped"]; // by the server, so neither here

// Nothing is done where the device was paired anew meanwhile: the verdicts stand, and are heard again as 'known'.
export async function takeVerdicts(database: PocketDatabase, heard: Heard): Promise<void> {
  const transaction = database.transaction([...kWhole], "readwrite", { durability: "strict" });
  const devices = transaction.objectStore("device");
  const outbox = transaction.objectStore("outbox");
  const acknowledged = transaction.objectStore("acknowledged");
  const told = transaction.objectStore("told");
  const device = await devices.get(kDevice);
  if (device?.secret === heard.secret) {
    if (heard.beginAnew) {
      // The server has another past: what it acknowledged goes back to wait, in its old order.
      for (const { sequence, entry } of await acknowledged.getAll()) await outbox.put({ sequence, entry });
      await acknowledged.clear();
    }
    for (const [index, { sequence, entry }] of heard.rows.entries()) {
      const { verdict, why } = heard.verdicts[index]!;
      const gone = kNothingKept.includes(verdict);
      await outbox.delete(sequence);
      if (!gone) await acknowledged.put({ sequence, entry, heard: heard.now });
      if (!kTold.includes(verdict)) continue;
      const before = await told.get(sequence);
      const seen = before?.verdict === verdict && before.why === why && before.seen;
      await told.put({ sequence, verdict, kind: entry.kind, ...(why === undefined ? {} : { why }), ...(gone ? {} : { entry }), seen });
    }
    await devices.put({ ...device, standing: "paired", ledger: heard.ledger, after: heard.after, contact: heard.now }, kDevice);
    if (heard.revoked) await wipePeople(transaction);
  }
  await transaction.done;
}
