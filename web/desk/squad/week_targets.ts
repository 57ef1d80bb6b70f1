// What a week gives of each family against its target: in full doses of a session, sets and minutes, never in the engine's
// own quarters.
import type { SquadBlock } from "./block.ts";

export interface FamilyWeek {
  week: number;
  doses: number; // full doses of a session, by quarters
  target: number;
  seconds: number; // of work, one player
  sets?: number; // where it is known which drills are of the family
}

export interface FamilyRow {
  family: string;
  weeks: FamilyWeek[];
}

export function familiesOf(block: SquadBlock, familyOf: (drill: string) => string | undefined): FamilyRow[] {
  const keys = [...new Set(block.weeks.flatMap(({ families }) => families.map(({ family }) => family)))];
  const known = block.sessions.every(({ drills }) => drills.every(({ drill }) => familyOf(drill) !== undefined));
  return keys.map((family) => ({
    family,
    weeks: block.weeks.flatMap(({ week, families }) => {
      const own = families.find((each) => each.family === family);
      if (!own) return [];
      const row: FamilyWeek = { week, doses: own.credits / 4, target: own.target / 4, seconds: own.work_seconds };
      if (known) row.sets = setsOf(block, week, (drill) => familyOf(drill) === family);
      return [row];
    }),
  }));
}

// Of a session that is over only what is known to have been done.
function setsOf(block: SquadBlock, week: number, isOf: (drill: string) => boolean): number {
  const drills = block.sessions.filter((session) => session.week === week).flatMap((session) => session.drills);
  return drills.filter(({ drill, done }) => isOf(drill) && done !== false).reduce((sum, { sets }) => sum + sets, 0);
}

export type LoadKey = "contacts" | "eccentric" | "hard_running_metres";
export const kLoads: LoadKey[] = ["contacts", "eccentric", "hard_running_metres"];

export interface LoadRow {
  load: LoadKey;
  weeks: { week: number; used: number; ceiling: number }[];
}

export function loadsOf(block: SquadBlock): LoadRow[] {
  return kLoads
    .map((load) => ({
      load,
      weeks: block.weeks.flatMap((each) => {
        const own = each[load];
        return own ? [{ week: each.week, ...own }] : [];
      }),
    }))
    .filter(({ weeks }) => weeks.length > 0);
}
