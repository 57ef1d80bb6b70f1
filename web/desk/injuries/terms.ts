// The terms of the records (docs/formats/records.md): 'region knee' in an entry, 'knee' in words, and back from whatever
// somebody types. The tables are the catalogue's (tools/generate/desk_tables.mjs).
import { language } from "../../shared/words/words.ts";
import table from "./record_terms.json";
import en from "./words/en.json";
import { isWord, say } from "./words.ts";

export type TermField = keyof typeof table;
export const kTermFields = Object.keys(table) as TermField[];

export type Terms = Partial<Record<TermField, string>>;

export const keysOf = (field: TermField): string[] => Object.keys(table[field]);

export function termWords(field: TermField, key: string): string {
  const words = en.term[field];
  // The two tables have the same keys (tests/desk/injuries.mjs).
  return isWord(words, key) ? say(`term.${field}.${key}` as "term.region.knee") : key;
}

export function termsOf(what: string[]): Terms {
  const out: Terms = {};
  for (const one of what) {
    const [field = "", key = ""] = one.split(" ");
    if (isWord(table, field) && key !== "") out[field] = key;
  }
  return out;
}

export function whatOf(terms: Terms): string[] {
  return kTermFields.filter((field) => terms[field]).map((field) => `${field} ${terms[field]}`);
}

// 'knee, left; joint sprain'; what is unknown is not said.
export function injuryWords(what: string[]): string {
  const { region, side, tissue } = termsOf(what);
  const where = region ? termWords("region", region) : say("no_region");
  const sided = side && side !== "middle" ? say("sided", { where, side: termWords("side", side) }) : where;
  return tissue ? say("where_and_what", { where: sided, what: termWords("tissue", tissue) }) : sided;
}

const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ").trim();

// Everything a term may be called, in the language shown and in the catalogue's.
function namesOf(field: TermField, key: string): string[] {
  const read_as = (table[field] as Record<string, string[]>)[key] ?? [];
  return [termWords(field, key), key, ...read_as].map(plain);
}

// The one term that was meant: by its whole name, else by a beginning that only one has.
export function termTyped(field: TermField, typed: string): string | undefined {
  void language.value;
  const text = plain(typed);
  if (text === "") return undefined;
  const whole = keysOf(field).find((key) => namesOf(field, key).includes(text));
  if (whole) return whole;
  const begun = keysOf(field).filter((key) => namesOf(field, key).some((name) => name.startsWith(text)));
  return begun.length === 1 ? begun[0] : undefined;
}
