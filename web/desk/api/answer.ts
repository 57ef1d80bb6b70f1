// What the server said, as a value: what was asked for, or why not, in words for whoever asked.
import type { Fault, operations } from "../../shared/api.ts";
import { wordsOf } from "../../shared/words/words.ts";
import en from "./words/en.json";
import es from "./words/es.json";

export type Operation = keyof operations;

type JsonOf<Body> = Body extends { content: { "application/json": infer Json } } ? Json : never;
type Responses<Name extends Operation> = operations[Name]["responses"];

// What comes with 200, 201 or 202.
export type Said<Name extends Operation> = JsonOf<Responses<Name>[Extract<keyof Responses<Name>, 200 | 201 | 202>]>;
// What the path wants, and the query may have.
type QueryOf<Name extends Operation> = operations[Name]["parameters"] extends { query?: infer Query } ? ([Query] extends [undefined] ? unknown : Query) : unknown;
export type ValuesOf<Name extends Operation> = operations[Name]["parameters"] extends { path: infer Path } ? Path & QueryOf<Name> : Record<string, never>;
export type BodyOf<Name extends Operation> = operations[Name] extends { requestBody: infer Body } ? JsonOf<Body> : undefined;

export interface Refusal {
  ok: false;
  refused: string; // the server's key, or one of 'no-signal', 'not-the-server', 'stopped'
  words: string;
  faults: Fault[]; // by field, of what was sent
  seconds?: number; // to wait before another try
}
export type Answer<Name extends Operation> = { ok: true; said: Said<Name> } | Refusal;

const words = wordsOf({ en, es });

const isKnown = (key: string): key is keyof typeof en.refused => Object.hasOwn(en.refused, key);

// Nobody answered: what was only read can be asked again; of what was to be done nobody knows.
export function silence(method: "GET" | "POST"): Refusal {
  return { ...refusal("no-signal"), ...(method === "GET" ? { words: words.say("no_answer") } : {}) };
}

// what: the server's own words, in English, for a key that this version of the desk does not know.
export function refusal(key: string, { what, faults = [], seconds }: { what?: string; faults?: Fault[]; seconds?: number } = {}): Refusal {
  const said = isKnown(key) ? words.say(`refused.${key}`) : (what ?? words.say("refused.fault"));
  return { ok: false, refused: key, words: said, faults, ...(seconds === undefined ? {} : { seconds }) };
}

// What was typed may turn the direction of writing: not beyond itself (Unicode, FSI and PDI).
const apart = (typed: string): string => `\u2068${typed}\u2069`;

// A sentence about one field that was not as it should be; at_field: it stands below that field.
export function faultWords({ field, found, expected }: Fault, { at_field = false } = {}): string {
  return words.say(at_field ? "fault_here" : "fault", { field, found: apart(found), expected });
}

interface Told {
  error?: unknown;
  what?: unknown;
  faults?: unknown;
  key?: unknown; // of the reason, where one refusal has several
}

const isReason = (key: unknown): key is keyof typeof en.reason => typeof key === "string" && Object.hasOwn(en.reason, key);

// A refusal of the server's, or of something between that is not the server.
export function refusalOf(status: number, body: unknown, retry_after: string | null): Refusal {
  const told = (typeof body === "object" && body !== null ? body : {}) as Told;
  if (typeof told.error !== "string") return refusal(status >= 500 ? "busy" : "not-the-server");
  const said = refusal(told.error, {
    ...(typeof told.what === "string" ? { what: told.what } : {}),
    faults: Array.isArray(told.faults) ? (told.faults as Fault[]) : [],
    ...(retry_after !== null && /^\d+$/.test(retry_after) ? { seconds: Number(retry_after) } : {}),
  });
  return isReason(told.key) ? { ...said, words: words.say(`reason.${told.key}`) } : said;
}
