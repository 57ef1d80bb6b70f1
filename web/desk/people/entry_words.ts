// An entry about somebody in words: what kind, and what it says. A kind or a key of a newer version stands as it is written.
import type { SeenEntry, SquadRow } from "../../shared/api.ts";
import { language, list, weekday } from "../../shared/words/words.ts";
import { wordFor } from "../drills/words.ts";
import { kTermFields, termsOf, termWords } from "../injuries/terms.ts";
import { gateWords, placeWords, stepWords } from "../injuries/words.ts";
import { nameOfDrill } from "../squad/drill_names.ts";
import { nameOf } from "./charges.ts";
import en from "./words/en.json";
import { say } from "./words.ts";

// What stands elsewhere in the row, or is for programs.
const kNotSaid = new Set(["id", "kind", "receipt", "received", "author", "author_role", "sequence", "device_time", "device", "player", "players", "corrects"]);

const isField = (key: string): key is keyof typeof en.field => Object.hasOwn(en.field, key);
const isValue = (key: string): key is keyof typeof en.value => Object.hasOwn(en.value, key);

export const isKind = (key: string): key is keyof typeof en.kind => Object.hasOwn(en.kind, key);
export const kindWords = (kind: string): string => (isKind(kind) ? say(`kind.${kind}`) : kind);

// 'under 13', as the server has it.
export function ageGroupWords(age_group: string): string {
  const age = /^under (\d+)$/.exec(age_group)?.[1];
  return age === undefined ? age_group : say("child.under", { age });
}

function plainWords(value: unknown): string {
  if (Array.isArray(value)) return list(value.map(plainWords));
  if (typeof value === "boolean") return say(value ? "value.yes" : "value.no");
  if (typeof value !== "string") return JSON.stringify(value);
  if (/^\d{4}-\d{2}-\d{2}$/.test(value)) return weekday(value);
  if (/^[0-9a-f]{8}-[0-9a-f]{4}-7/.test(value)) return say("value.entry", { mark: value.slice(-6) });
  return isValue(value) ? say(`value.${value}`) : value;
}

// Terms of the records ('region knee'); what is none of them, such as what a coach was taught, stands as it is written.
function whatWords(value: unknown): string {
  const terms = Array.isArray(value) ? termsOf(value.map(String)) : {};
  const told = kTermFields.flatMap((field) => (terms[field] ? [termWords(field, terms[field])] : []));
  return told.length > 0 ? told.join(", ") : plainWords(value);
}

const isText = (value: unknown): value is string => typeof value === "string";
const each = (value: unknown, words: (one: string) => string): string => list((Array.isArray(value) ? value : [value]).map((one) => (isText(one) ? words(one) : plainWords(one))));

function valueWords(key: string, value: unknown, squads: SquadRow[]): string {
  if (key === "squad") return each(value, (id) => nameOf(squads, id));
  if (key === "place" || key === "areas") return each(value, placeWords);
  if (key === "what") return whatWords(value);
  if (key === "drill") return each(value, nameOfDrill);
  if (key === "kinds") return each(value, (kind) => wordFor("stress", kind));
  if (key === "step") return each(value, stepWords);
  if (key === "gate") return each(value, gateWords);
  return plainWords(value);
}

// [['where', 'knee'], …]
export function fieldsOf(entry: SeenEntry, squads: SquadRow[]): [string, string][] {
  void language.value; // the words are of the language that is shown
  return Object.entries(entry)
    .filter(([key]) => !kNotSaid.has(key))
    .map(([key, value]) => [isField(key) ? say(`field.${key}`) : key, valueWords(key, value, squads)]);
}
