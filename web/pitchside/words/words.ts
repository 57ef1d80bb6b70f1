// The words of the screens. A key that is not there is a type error, in either language; both files have the same keys.
import { signal } from "@preact/signals";
import en from "./en.json";
import es from "./es.json";

export type Language = "en" | "es";
type Words = typeof en;

type Leaf<Table, Value, At extends string = ""> = {
  [Key in keyof Table & string]: Table[Key] extends Value
    ? `${At}${Key}`
    : Table[Key] extends string | unknown[]
      ? never
      : Leaf<Table[Key], Value, `${At}${Key}.`>;
}[keyof Table & string];

export type Key = Leaf<Omit<Words, "many">, string>;
export type ListKey = Leaf<Words, string[]>;
export type ManyKey = keyof Words["many"];

const kLanguages: Record<Language, Words> = { en, es };

// Of days and lists: the day before the month, no comma before the last.
const kLocale: Record<Language, string> = { en: "en-GB", es: "es" };

export const language = signal<Language>("en");

function found(key: string): unknown {
  let at: unknown = kLanguages[language.value];
  for (const part of key.split(".")) at = (at as Record<string, unknown>)[part];
  return at;
}

function filled(text: string, values: Record<string, string | number>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}

export function say(key: Key, values: Record<string, string | number> = {}): string {
  return filled(found(key) as string, values);
}

export function lines(key: ListKey): string[] {
  return found(key) as string[];
}

export function many(key: ManyKey, count: number): string {
  const forms: Partial<Record<Intl.LDMLPluralRule, string>> = kLanguages[language.value].many[key];
  const rule = new Intl.PluralRules(language.value).select(count);
  return filled(forms[rule] ?? forms.other ?? "", { count: number(count) });
}

export function list(names: string[]): string {
  return new Intl.ListFormat(kLocale[language.value], { type: "conjunction" }).format(names);
}

// 'Tuesday 1 December' of '2026-12-01'.
export function weekday(day: string): string {
  const noon = new Date(`${day}T12:00:00`);
  return new Intl.DateTimeFormat(kLocale[language.value], { weekday: "long", day: "numeric", month: "long" }).format(noon);
}

export function number(value: number): string {
  return new Intl.NumberFormat(language.value, { maximumFractionDigits: 1 }).format(value);
}
