// Which squads the lead may want to watch, and why: docs/model/desk_week.md has the rule. It looks at evenings that were
// entered and at nothing else; it says nothing of a coach or a child.
import type { Evening, SquadRow } from "./week_table.ts";

export type ReasonKind = "not-run" | "unheard" | "nobody" | "few" | "asked-help" | "cut-short";

export interface Reason {
  kind: ReasonKind;
  count: number; // evenings
  of: number; // evenings of the squad that are over
  days: string[];
  drills: string[]; // that were asked help with
}

export interface Visit {
  squad: string;
  name: string;
  weight: number;
  reasons: Reason[]; // the weightiest first
}

// What a visit can mend weighs most: that it is done, then that it is done well, then that there is time for it.
export const kReasonWeight: Record<ReasonKind, number> = {
  "not-run": 3,
  "unheard": 3,
  "nobody": 3,
  "few": 2,
  "asked-help": 2,
  "cut-short": 1,
};
export const kMostVisits = 3;
export const kLeastWeight = 2; // one evening cut short alone is no reason to drive out

function isOf(evening: Evening, kind: ReasonKind): boolean {
  switch (kind) {
    case "few":
      return evening.did_it === "few";
    case "asked-help":
      return evening.needs_help.length > 0;
    default:
      return evening.state === kind;
  }
}

function reasonsOf(over: Evening[]): Reason[] {
  const reasons: Reason[] = [];
  for (const kind of Object.keys(kReasonWeight) as ReasonKind[]) {
    const found = over.filter((evening) => isOf(evening, kind));
    if (found.length === 0) continue;
    const drills = kind === "asked-help" ? [...new Set(found.flatMap(({ needs_help }) => needs_help))] : [];
    reasons.push({ kind, count: found.length, of: over.length, days: found.map(({ day }) => day), drills });
  }
  const weight = ({ kind, count }: Reason) => kReasonWeight[kind] * count;
  return reasons.sort((one, other) => weight(other) - weight(one));
}

export function visitsOf(squads: SquadRow[], evenings: Evening[]): Visit[] {
  const visits = squads.map(({ id, name }): Visit => {
    const reasons = reasonsOf(evenings.filter(({ squad, state }) => squad === id && state !== "to-come"));
    const weight = reasons.reduce((sum, { kind, count }) => sum + kReasonWeight[kind] * count, 0);
    return { squad: id, name, weight, reasons };
  });
  return visits
    .filter(({ weight }) => weight >= kLeastWeight)
    .sort((one, other) => other.weight - one.weight || (one.name < other.name ? -1 : 1))
    .slice(0, kMostVisits);
}

export interface HelpAsked {
  drill: string;
  asked: { squad: string; day: string }[]; // the latest first
}

// The drills most squads asked help with come first: one word of the lead's to all coaches may do.
export function helpAsked(evenings: Evening[]): HelpAsked[] {
  const by_drill = new Map<string, { squad: string; day: string }[]>();
  for (const { squad, day, needs_help } of evenings) {
    for (const drill of needs_help) by_drill.set(drill, [{ squad, day }, ...(by_drill.get(drill) ?? [])]);
  }
  const squads = (asked: { squad: string }[]) => new Set(asked.map(({ squad }) => squad)).size;
  return [...by_drill]
    .map(([drill, asked]) => ({ drill, asked }))
    .sort((one, other) => squads(other.asked) - squads(one.asked) || (one.drill < other.drill ? -1 : 1));
}
