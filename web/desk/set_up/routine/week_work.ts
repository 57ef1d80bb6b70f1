// What a week of a house routine gives of each family against its target, by the planner's own arithmetic
// (docs/model/session.md, 'Credits'; docs/model/block.md, 'Targets'), told in full doses.
import type { DrillDocument, FamilyRow } from "../../drills/drill_document.ts";
import type { DrillOf, Line, Routine } from "./routine_document.ts";

export interface FamilyTarget extends FamilyRow {
  required?: boolean;
  session_seconds: number; // of work a player that are a full dose
  week_seconds?: number;
  eccentric_first?: { from_age: number; other_work_percent: number };
}
export interface FamilyWeek {
  family: string;
  doses: number;
  target: number;
  required: boolean;
  drills: number;
}

const kPassSeconds = 8;
const kMostQuarters = 40; // of one drill, and of a family in one session
const kFullSessionsAWeek = 2.5;

export function workSeconds({ dose }: DrillDocument, { sets, amount }: Line): number {
  const unit = dose.kind === "reps" ? (dose.tempo_seconds ?? 0) : dose.kind === "passes" ? kPassSeconds : 1;
  return sets * amount * unit * (dose.sides === true ? 2 : 1);
}

function quartersOf(drill: DrillDocument, line: Line, { session_seconds, eccentric_first }: FamilyTarget, age: number): number {
  const less = eccentric_first !== undefined && age >= eccentric_first.from_age && !((drill.loads?.eccentric ?? 0) > 0);
  const share = less ? eccentric_first.other_work_percent / 100 : 1;
  return Math.min(kMostQuarters, Math.max(1, Math.round((4 * workSeconds(drill, line) * share) / session_seconds)));
}

export function weekOf(routine: Routine, drillOf: DrillOf, families: FamilyTarget[], age: number, evenings: number): FamilyWeek[] {
  return families.map((family) => {
    const own = routine.drill.flatMap((line) => {
      const drill = drillOf(line.id);
      return drill?.family === family.key ? [quartersOf(drill, line, family, age)] : [];
    });
    const quarters = Math.min(kMostQuarters, own.reduce((sum, one) => sum + one, 0));
    return {
      family: family.key,
      doses: (quarters * evenings) / 4,
      target: (family.week_seconds ?? kFullSessionsAWeek * family.session_seconds) / family.session_seconds,
      required: family.required === true,
      drills: own.length,
    };
  });
}
