// What a block that has begun still owes (docs/model/rolling.md, 'What is owed'): weeks to come whose target is above the
// family's usual one, because a week before gave less than was planned.
import type { SquadBlock } from "./block.ts";

export interface Owed {
  week: number;
  families: { family: string; target: number; usual: number }[]; // in full doses of a session
}

export function owedIn({ weeks, sessions, rolling }: SquadBlock): Owed[] {
  if (!rolling) return [];
  const usual = new Map<string, number>();
  for (const { families } of weeks) for (const { family, target } of families) usual.set(family, Math.min(target, usual.get(family) ?? Infinity));
  const to_come = weeks.filter(({ week }) => sessions.some(({ week: own, date }) => own === week && date >= rolling.today));
  return to_come
    .map(({ week, families }) => ({
      week,
      families: families.filter(({ family, target }) => target > (usual.get(family) ?? target)).map(({ family, target }) => ({ family, target: target / 4, usual: (usual.get(family) ?? 0) / 4 })),
    }))
    .filter(({ families }) => families.length > 0);
}
