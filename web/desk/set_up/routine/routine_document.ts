// A house routine as its file has it (docs/formats/catalogue.md), and what can be done to one. Order follows the phase, and a
// family stays together inside it, as the planner has them (../../squad/places_in_order.ts).
import { type DoseStep, type DrillDocument, kPhases, type Rung } from "../../drills/drill_document.ts";
import { movedBy, movedTo, type Placed } from "../../squad/places_in_order.ts";

export interface Line {
  id: string;
  rung: string;
  sets: number;
  amount: number;
}
export interface Routine {
  id: string;
  name: string;
  ages: { from: number; to: number };
  minutes: number; // the slot that it is written for
  note?: string;
  drill: Line[];
}
export type DrillOf = (id: string) => DrillDocument | undefined;

export const kAges: [number, number] = [8, 19];
export const kMinutes: [number, number] = [5, 60];
export const kMostLines = 40;

// A drill that the catalogue has not (any more) stands where it is, in no phase.
export function placedOf(routine: Routine, drillOf: DrillOf): Placed[] {
  return routine.drill.map(({ id }) => ({ drill: id, phase: drillOf(id)?.phase ?? "", family: drillOf(id)?.family ?? "" }));
}

function inOrderOf(routine: Routine, order: Placed[] | undefined): Routine {
  if (!order) return routine;
  return { ...routine, drill: order.map(({ drill }) => routine.drill.find(({ id }) => id === drill) as Line) };
}

export const lineMovedTo = (routine: Routine, drillOf: DrillOf, drill: string, at: string): Routine => inOrderOf(routine, movedTo(placedOf(routine, drillOf), drill, at));
export const lineMovedBy = (routine: Routine, drillOf: DrillOf, drill: string, by: 1 | -1): Routine => inOrderOf(routine, movedBy(placedOf(routine, drillOf), drill, by));

export function withoutLine(routine: Routine, drill: string): Routine {
  return { ...routine, drill: routine.drill.filter(({ id }) => id !== drill) };
}

export function withLine(routine: Routine, drill: string, keys: Partial<Line>): Routine {
  return { ...routine, drill: routine.drill.map((line) => (line.id === drill ? { ...line, ...keys } : line)) };
}

export const rungsFor = (drill: DrillDocument, age: number): Rung[] => drill.rung.filter(({ ages_from }) => (ages_from ?? 0) <= age);

export function isForAges(drill: DrillDocument, { from, to }: Routine["ages"]): boolean {
  return drill.ages.from <= from && drill.ages.to >= to && rungsFor(drill, from).length > 0;
}

// What may be put in: every drill once, and none that some of these ages may not do.
export function drillsToAdd(routine: Routine, drills: DrillDocument[]): DrillDocument[] {
  return drills.filter((drill) => isForAges(drill, routine.ages) && !routine.drill.some(({ id }) => id === drill.id));
}

const phaseRank = (phase: string | undefined): number => (kPhases as readonly string[]).indexOf(phase ?? "");

// Behind its own family, else behind its phase, else behind the phases before it: at its easiest and shortest.
export function withDrill(routine: Routine, drill: DrillDocument, drillOf: DrillOf): Routine {
  const rung = rungsFor(drill, routine.ages.from)[0] ?? drill.rung[0];
  const dose: DoseStep | undefined = drill.dose.steps[0];
  if (!rung || !dose || routine.drill.length >= kMostLines) return routine;
  const known = routine.drill.map(({ id }) => drillOf(id));
  const last = (fits: (other: DrillDocument) => boolean): number => known.reduce((found, other, at) => (other !== undefined && fits(other) ? at : found), -1);
  const family = last((other) => other.phase === drill.phase && other.family === drill.family);
  const at = family >= 0 ? family : last((other) => phaseRank(other.phase) <= phaseRank(drill.phase));
  const line = { id: drill.id, rung: rung.key, sets: dose.sets, amount: dose.amount };
  return { ...routine, drill: [...routine.drill.slice(0, at + 1), line, ...routine.drill.slice(at + 1)] };
}
