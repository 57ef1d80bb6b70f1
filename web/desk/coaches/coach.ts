// One coach as the server tells of them: lessons, visits and what they asked help with, the latest first.
import type { Said } from "../api/answer.ts";

export type Coach = Said<"coaches">["coaches"][number];

const latestFirst = <One extends { day: string }>(all: One[]): One[] => [...all].sort((left, right) => right.day.localeCompare(left.day));

export const lessonsOf = ({ taught }: Coach): Coach["taught"] => latestFirst(taught);
export const visitsOf = ({ visits }: Coach): Coach["visits"] => latestFirst(visits);

export interface Asked {
  drill: string;
  times: number;
  latest: string; // day
}

// What was asked about most lately comes first; each drill once.
export function askedOf({ help }: Coach): Asked[] {
  const of_drills = new Map<string, Asked>();
  for (const { drill, day } of latestFirst(help)) {
    const there = of_drills.get(drill);
    of_drills.set(drill, { drill, times: (there?.times ?? 0) + 1, latest: there?.latest ?? day });
  }
  return [...of_drills.values()];
}
