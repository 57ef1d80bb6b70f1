// What is different in a plan, and why, from the answer's own changes. Words of the screen are put to it there; names,
// doses and reasons are the door's.
import type { PlanAnswer, PlanChange, PlanItem, Reason } from "../engine/answers.ts";

export type Difference = "out" | "new" | "less" | "more" | "easier" | "harder" | "back";

export interface ChangeWords {
  difference: Difference;
  drill: string;
  name: string;
  to: string;
  why: string; // the door's sentence; empty: nothing to be said
  reason?: Reason;
}

const kDifference: Record<PlanChange["kind"], Difference> = {
  "left-out": "out",
  "new-drill": "new",
  "smaller-dose": "less",
  "larger-dose": "more",
  "easier-rung": "easier",
  "harder-rung": "harder",
};

export type NameOf = (drill: string) => string;

// What departs from the house routine.
export function changesFromRoutine(plan: PlanAnswer, nameOf: NameOf): ChangeWords[] {
  return (plan.changes ?? []).map((change) => ({
    difference: kDifference[change.kind],
    drill: change.drill,
    name: nameOf(change.drill),
    to: change.to,
    why: change.why,
    reason: change.reason,
  }));
}

const same = (one: PlanItem, other: PlanItem): boolean =>
  one.rung === other.rung && one.sets === other.sets && one.amount === other.amount;

// What departs from the plan before it. A drill that is again as the routine has it is 'back' and needs no reason.
export function changesBetween(before: PlanAnswer, after: PlanAnswer, nameOf: NameOf): ChangeWords[] {
  const told = new Map(changesFromRoutine(after, nameOf).map((change) => [change.drill, change]));
  const old = new Map(before.items.map((item) => [item.drill, item]));
  const now = new Map(after.items.map((item) => [item.drill, item]));
  const found: ChangeWords[] = [];
  for (const item of before.items) {
    if (now.has(item.drill)) continue;
    const change = told.get(item.drill);
    found.push({ difference: "out", drill: item.drill, name: item.name, to: "", why: change?.why ?? "", reason: change?.reason });
  }
  for (const item of after.items) {
    const was = old.get(item.drill);
    if (was && same(was, item)) continue;
    const change = told.get(item.drill);
    if (change) found.push({ ...change, to: item.dose });
    else found.push({ difference: "back", drill: item.drill, name: item.name, to: item.dose, why: "" });
  }
  return found;
}
