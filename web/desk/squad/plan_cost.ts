// What a new plan of the same block costs and brings against the one before, in full doses of a session: by week to come and
// family, where the shortfall against the target of then and of now differs.
import type { SquadBlock } from "./block.ts";

export interface WeekCost {
  week: number;
  families: { family: string; short: number; before: number }[]; // how much is missing now, and was missing
}

const shortIn = (block: SquadBlock, week: number, family: string): number => {
  const own = block.weeks.find((each) => each.week === week)?.families.find((each) => each.family === family);
  return own ? Math.max(0, own.target - own.credits) / 4 : 0;
};

export function planCost(before: SquadBlock, after: SquadBlock, today: string): WeekCost[] {
  const to_come = after.weeks.filter(({ week }) => after.sessions.some((session) => session.week === week && session.date >= today));
  return to_come
    .map(({ week, families }) => ({
      week,
      families: families.map(({ family }) => ({ family, short: shortIn(after, week, family), before: shortIn(before, week, family) })).filter(({ short, before: was }) => short !== was),
    }))
    .filter(({ families }) => families.length > 0);
}
