// Which drills of the catalogue are shown, and in which order: by what is asked for and the words of the language set.
import { kFamilies, kPhases, type DrillDocument } from "./drill_document.ts";

export interface Wanted {
  family?: string;
  phase?: string;
  formation?: string;
  age?: number; // a drill that players of this age may do
  without?: string; // nothing of this kind is there: what needs it is left out; 'all' for nothing but the ground
  ground?: string; // may be done on it
  text?: string; // in any of its words
  said?: string; // in a cue that coaches are taught to say
}
export const kOrders = ["session", "name", "age", "telling"] as const;
export type Order = (typeof kOrders)[number];

// Letters as they are looked for: no case, no accents.
export function plain(text: string): string {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
}

const has = (texts: string[], words: string): boolean => {
  const within = plain(texts.join(" \n "));
  return plain(words).split(/\s+/).every((word) => within.includes(word));
};

export function cuesOf(drill: DrillDocument): string[] {
  return [...drill.cues, ...drill.watch.map(({ cue }) => cue)];
}

function textsOf(drill: DrillDocument): string[] {
  return [drill.id, drill.name, drill.purpose, drill.how, ...drill.rung.map(({ change }) => change), ...cuesOf(drill), ...drill.watch.map(({ fault }) => fault)];
}

// The easiest rung decides what must be there: a harder one may ask for more.
function needsOf(drill: DrillDocument): string[] {
  return [...(drill.needs ?? []), ...(drill.rung[0]?.needs ?? [])];
}

export function isWanted(drill: DrillDocument, wanted: Wanted): boolean {
  const { family, phase, formation, age, without, ground, text, said } = wanted;
  if (family && drill.family !== family) return false;
  if (phase && drill.phase !== phase) return false;
  if (formation && drill.formation !== formation) return false;
  if (age !== undefined && (age < drill.ages.from || age > drill.ages.to)) return false;
  if (without && (without === "all" ? needsOf(drill).length > 0 : needsOf(drill).includes(without))) return false;
  if (ground && (drill.not_on ?? []).includes(ground)) return false;
  if (text && !has(textsOf(drill), text)) return false;
  return !said || has(cuesOf(drill), said);
}

const place = (all: readonly string[], one: string) => all.indexOf(one);

function rankOf(drill: DrillDocument): number {
  return place(kPhases, drill.phase) * kFamilies.length + place(kFamilies, drill.family);
}

export function sorted(drills: DrillDocument[], order: Order): DrillDocument[] {
  const by: Record<Order, (drill: DrillDocument) => number> = {
    session: rankOf,
    name: () => 0,
    age: ({ ages }) => ages.from,
    telling: ({ telling_seconds }) => telling_seconds,
  };
  return [...drills].sort((one, other) => by[order](one) - by[order](other) || one.name.localeCompare(other.name));
}
