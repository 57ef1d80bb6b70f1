// An entry about somebody in words: what kind, and what it says. A kind or a key of a newer version stands as it is written.
import type { SeenEntry } from "../../shared/api.ts";
import { language, list, weekday } from "../../shared/words/words.ts";
import en from "./words/en.json";
import { say } from "./words.ts";

// What stands elsewhere in the row, or is for programs.
const kNotSaid = new Set(["id", "kind", "receipt", "received", "author", "author_role", "sequence", "device_time", "device", "player", "players", "corrects"]);

const isKind = (key: string): key is keyof typeof en.kind => Object.hasOwn(en.kind, key);
const isField = (key: string): key is keyof typeof en.field => Object.hasOwn(en.field, key);
const isValue = (key: string): key is keyof typeof en.value => Object.hasOwn(en.value, key);

export const kindWords = (kind: string): string => (isKind(kind) ? say(`kind.${kind}`) : kind);

function valueWords(value: unknown): string {
  if (Array.isArray(value)) return list(value.map(valueWords));
  if (typeof value === "boolean") return say(value ? "value.yes" : "value.no");
  if (typeof value !== "string") return JSON.stringify(value);
  if (/^\d{4}-\d{2}-\d{2}$/.test(value)) return weekday(value);
  if (/^[0-9a-f]{8}-[0-9a-f]{4}-7/.test(value)) return say("value.entry", { mark: value.slice(-6) });
  return isValue(value) ? say(`value.${value}`) : value;
}

// [['where', 'knee'], …]
export function fieldsOf(entry: SeenEntry): [string, string][] {
  void language.value; // the words are of the language that is shown
  return Object.entries(entry)
    .filter(([key]) => !kNotSaid.has(key))
    .map(([key, value]) => [isField(key) ? say(`field.${key}`) : key, valueWords(value)]);
}
