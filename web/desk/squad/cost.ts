// What a try did: against the evening as it is planned, in drills, families that nothing touches any more, and time.
import type { PlanAnswer } from "../../shared/engine/answers.ts";
import { changesBetween, type ChangeWords, type NameOf } from "../../shared/evening/change_words.ts";

export interface Cost {
  changes: ChangeWords[]; // of drills, each with its reason
  moved: string[]; // drills that stand elsewhere among those that stay
  uncovered: NonNullable<PlanAnswer["uncovered"]>; // no longer touched
  covered: string[]; // families that are touched again
  seconds: number; // more than before; below zero: fewer
}

// The least that has to be taken out so that the others keep their order: what moved is that, not all that slid aside.
function movedBetween(before: string[], after: string[]): string[] {
  const stay = after.filter((drill) => before.includes(drill));
  const old = before.filter((drill) => stay.includes(drill));
  // Longest common order, by the classical table.
  const best = Array.from({ length: old.length + 1 }, () => new Array<number>(stay.length + 1).fill(0));
  const at = (row: number, column: number): number => best[row]?.[column] ?? 0;
  for (let row = old.length - 1; row >= 0; row--) {
    for (let column = stay.length - 1; column >= 0; column--) {
      const longer = old[row] === stay[column] ? at(row + 1, column + 1) + 1 : Math.max(at(row + 1, column), at(row, column + 1));
      (best[row] as number[])[column] = longer;
    }
  }
  const kept = new Set<string>();
  for (let row = 0, column = 0; row < old.length && column < stay.length; ) {
    if (old[row] === stay[column]) {
      kept.add(old[row] as string);
      row += 1;
      column += 1;
    } else if (at(row + 1, column) >= at(row, column + 1)) row += 1;
    else column += 1;
  }
  return stay.filter((drill) => !kept.has(drill));
}

export function costOf(before: PlanAnswer, after: PlanAnswer, nameOf: NameOf): Cost {
  const open = (plan: PlanAnswer) => plan.uncovered ?? [];
  const has = (plan: PlanAnswer, family: string) => open(plan).some((each) => each.family === family);
  return {
    changes: changesBetween(before, after, nameOf),
    moved: movedBetween(before.items.map(({ drill }) => drill), after.items.map(({ drill }) => drill)),
    uncovered: open(after).filter(({ family }) => !has(before, family)),
    covered: open(before).map(({ family }) => family).filter((family) => !has(after, family)),
    seconds: after.planned_seconds - before.planned_seconds,
  };
}

export const isNothing = ({ changes, moved, uncovered, covered, seconds }: Cost): boolean =>
  changes.length + moved.length + uncovered.length + covered.length === 0 && seconds === 0;
