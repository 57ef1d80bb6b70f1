// What was told of a coach's squads in this week and the one before: evenings, drills that asked for help, the lead's visits.
// Counts for a talk, not a grade: a squad may have two coaches, and an evening that fell out is nobody's fault.
import type { Account, Week } from "../../shared/api.ts";

export interface TwoWeeks {
  held: number;
  cut_short: number;
  missed: number;
  help: string[]; // ids of drills, the latest first
  visits: number;
}

// '2026-11-23' of the Monday so many weeks before a day, by the calendar of this computer.
export function mondayBefore(day: Date, weeks: number): string {
  const back = (day.getDay() + 6) % 7;
  const monday = new Date(day.getFullYear(), day.getMonth(), day.getDate() - back - 7 * weeks, 12);
  return [monday.getFullYear(), monday.getMonth() + 1, monday.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

export function twoWeeksOf(account: Account, weeks: (Week | undefined)[]): TwoWeeks {
  const squads = new Set(account.charges.map(({ squad }) => squad));
  const evenings = weeks.flatMap((week) => week?.evenings ?? []).filter(({ squad }) => squads.has(squad));
  const latest = [...evenings].sort((left, right) => right.day.localeCompare(left.day));
  const count = (word: string): number => evenings.filter(({ happened }) => happened === word).length;
  return {
    held: count("held"),
    cut_short: count("cut-short"),
    missed: count("missed"),
    help: [...new Set(latest.flatMap(({ drills_that_need_help }) => drills_that_need_help))],
    visits: evenings.reduce((sum, { visits }) => sum + visits, 0),
  };
}
