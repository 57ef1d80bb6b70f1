// Drills that coaches asked help with: those that most squads named come first, since one word to all coaches may do.
import type { Evening } from "./week_table.ts";

export interface HelpAsked {
  drill: string;
  asked: { squad: string; day: string }[]; // the latest first
}

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
