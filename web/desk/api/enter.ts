// Enters something into the ledger from the desk. An entry has its id from the moment when it is made, so that the same one
// sent again, after nobody answered, is known and not doubled.
import type { Verdict } from "../../shared/api.ts";
import { idAfter } from "../../shared/entry/entry_id.ts";
import { wordsOf } from "../../shared/words/words.ts";
import { type Refusal, refusal } from "./answer.ts";
import { ask } from "./ask.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export interface NewEntry {
  id: string;
  kind: string;
  [field: string]: unknown; // as docs/formats/ledger.md has the kind's
}

const words = wordsOf({ en, es });
let last: string | undefined;

export function newEntry(kind: string, fields: Record<string, unknown>): NewEntry {
  last = idAfter(last, Date.now());
  return { ...fields, id: last, kind };
}

type NotTaken = Verdict & { verdict: Exclude<Verdict["verdict"], "stored" | "known"> };
const isNotTaken = (one: Verdict): one is NotTaken => one.verdict !== "stored" && one.verdict !== "known";

// Undefined where all of them are part of the books now.
export async function enter(entries: NewEntry[]): Promise<Refusal | undefined> {
  const answer = await ask("enter", {}, { entries });
  if (!answer.ok) return answer;
  const not = answer.said.verdicts.find(isNotTaken);
  if (!not) return undefined;
  const told = words.say(`verdict.${not.verdict}`);
  return { ...refusal(not.verdict), words: not.why ? `${told} (${not.why})` : told };
}
