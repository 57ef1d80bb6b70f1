// What somebody saw and did when a player was hurt, as docs/formats/incident.md has it; what was left open is left out, and
// the page has lines to write on in its place. Who and on which day the books know.
import type { components } from "../../shared/api.ts";

export interface Told {
  who: string;
  by: string;
  at: string; // '18:25'
}
export interface Incident {
  time: string;
  place: string;
  what_happened: string;
  signs: string; // a line each
  done: string; // a line each
  told: Told[];
  reported_by: string;
  reported_on: string;
}

export const kMostLetters = 200; // of a text, and of each line; of what happened:
export const kMostOfWhatHappened = 1500;
export const kMostLines = 12;

export const emptyIncident = (today: string): Incident => ({
  time: "", place: "", what_happened: "", signs: "", done: "", told: [{ who: "", by: "", at: "" }], reported_by: "", reported_on: today,
});

const linesOf = (text: string): string[] => text.split("\n").map((line) => line.trim()).filter((line) => line !== "");
const kept = (fields: Record<string, string>): Record<string, string> => Object.fromEntries(Object.entries(fields).map(([key, value]) => [key, value.trim()]).filter(([, value]) => value !== ""));

export type IncidentFault = "too_many" | "too_long" | "too_early" | "too_late";

// By the field it is about; what the server would refuse, said before it is asked.
export function faultsOf(incident: Incident, day: string, today: string): Partial<Record<keyof Incident, IncidentFault>> {
  const out: Partial<Record<keyof Incident, IncidentFault>> = {};
  if (incident.reported_on !== "" && incident.reported_on < day) out.reported_on = "too_early";
  if (incident.reported_on > today) out.reported_on = "too_late";
  for (const field of ["signs", "done"] as const) {
    const lines = linesOf(incident[field]);
    if (lines.length > kMostLines) out[field] = "too_many";
    else if (lines.some((line) => line.length > kMostLetters)) out[field] = "too_long";
  }
  return out;
}

export function bodyOf({ signs, done, told, what_happened, ...texts }: Incident): components["schemas"]["Incident"] {
  const people = told.filter(({ who }) => who.trim() !== "").map((one) => ({ ...kept({ ...one }), who: one.who.trim() }));
  const lists = { signs: linesOf(signs), done: linesOf(done) };
  return {
    ...kept({ ...texts, what_happened: what_happened.replace(/\s+/g, " ") }),
    ...(lists.signs.length > 0 ? { signs: lists.signs } : {}),
    ...(lists.done.length > 0 ? { done: lists.done } : {}),
    ...(people.length > 0 ? { told: people } : {}),
  };
}
