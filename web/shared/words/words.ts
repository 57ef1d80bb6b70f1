// The words of an app's screens, in the language that is chosen for all of them. Each part of an app has its own two tables
// of the same keys; a key that is not there is a type error, in either language.
import { signal } from "@preact/signals";

export type Language = "en" | "es";
type Forms = Partial<Record<Intl.LDMLPluralRule, string>>;

type Leaf<Table, Value, At extends string = ""> = {
  [Key in keyof Table & string]: Table[Key] extends Value
    ? `${At}${Key}`
    : Table[Key] extends string | unknown[]
      ? never
      : Leaf<Table[Key], Value, `${At}${Key}.`>;
}[keyof Table & string];

export type KeyOf<Table> = Leaf<Omit<Table, "many">, string>;
export type ListKeyOf<Table> = Leaf<Omit<Table, "many">, string[]>;
export type ManyKeyOf<Table> = Table extends { many: infer Many } ? keyof Many & string : never;
export type Values = Record<string, string | number>;

export interface Words<Table> {
  say(key: KeyOf<Table>, values?: Values): string;
  lines(key: ListKeyOf<Table>): string[];
  many(key: ManyKeyOf<Table>, count: number, values?: Values): string; // of the forms under 'many', with {count}
}

// Of days and lists: the day before the month, no comma before the last.
const kLocale: Record<Language, string> = { en: "en-GB", es: "es" };

export const language = signal<Language>("en");

function filled(text: string, values: Values): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}

// A formatter takes longer to make than to use a hundred times: each is made once.
const made = new Map<string, unknown>();
function once<Formatter>(name: string, make: () => Formatter): Formatter {
  const known = made.get(name) as Formatter | undefined;
  if (known !== undefined) return known;
  const formatter = make();
  made.set(name, formatter);
  return formatter;
}

export function wordsOf<Table extends object>(tables: Record<Language, Table>): Words<Table> {
  function found(key: string): unknown {
    let at: unknown = tables[language.value];
    for (const part of key.split(".")) at = (at as Record<string, unknown>)[part];
    return at;
  }
  return {
    say: (key, values = {}) => filled(found(key) as string, values),
    lines: (key) => found(key) as string[],
    many(key, count, values = {}) {
      const forms = found(`many.${key}`) as Forms;
      const rule = once(`plural ${language.value}`, () => new Intl.PluralRules(language.value)).select(count);
      return filled(forms[rule] ?? forms.other ?? "", { ...values, count: number(count) });
    },
  };
}

const listed = (names: string[], type: "conjunction" | "disjunction"): string =>
  once(`${type} ${language.value}`, () => new Intl.ListFormat(kLocale[language.value], { type })).format(names);

export function list(names: string[]): string {
  return listed(names, "conjunction");
}

// 'A, B or C'.
export function anyOf(names: string[]): string {
  return listed(names, "disjunction");
}

export function number(value: number): string {
  return once(`number ${language.value}`, () => new Intl.NumberFormat(language.value, { maximumFractionDigits: 1 })).format(value);
}

function dayWritten(day: string, how: Intl.DateTimeFormatOptions): string {
  return once(`${JSON.stringify(how)} ${language.value}`, () => new Intl.DateTimeFormat(kLocale[language.value], how)).format(new Date(`${day}T12:00:00`));
}

// 'Tuesday 1 December' of '2026-12-01'.
export function weekday(day: string): string {
  return dayWritten(day, { weekday: "long", day: "numeric", month: "long" });
}

// 'Tue 1 Dec': where a column is narrow.
export function shortDay(day: string): string {
  return dayWritten(day, { weekday: "short", day: "numeric", month: "short" });
}

// '1 December 2026': a day that may be of another year.
export function wholeDay(day: string): string {
  return dayWritten(day, { day: "numeric", month: "long", year: "numeric" });
}

// '1 Dec 2026': the same where a column is narrow.
export function shortWholeDay(day: string): string {
  return dayWritten(day, { day: "numeric", month: "short", year: "numeric" });
}

// '1 Dec 2026, 18:05' of the server's '2026-12-01T18:05:00+01:00': as the club's own clock showed it, wherever one reads it.
export function moment(stamp: string): string {
  return `${shortWholeDay(stamp.slice(0, 10))}, ${stamp.slice(11, 16)}`;
}
