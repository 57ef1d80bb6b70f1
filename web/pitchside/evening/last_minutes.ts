// Fewer minutes than the door plans for: of drills that it planned, those that matter most and fit, in their order.
import type { PlanAnswer, PlanItem } from "../../shared/engine/answers.ts";
import type { EveningPackage } from "../package/evening_package.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";

const kMostItems = 16; // of which every choice is tried

// By the catalogue's weights of families: what protects most when it is there.
export function weightsOf(pack: EveningPackage): Map<string, number> {
  const families = (pack.catalogue["families"] as DoorTable | undefined)?.["family"];
  if (!Array.isArray(families)) return new Map();
  return new Map(families.map((each) => each as DoorTable).map((each) => [String(each["key"]), Number(each["weight"] ?? 1)]));
}

// What came before an item has gone: who stands otherwise than the drill before needs the longest change of all.
function changeAfter(items: PlanItem[], at: number, before: number | undefined): number {
  const item = items[at];
  const first = items[0]?.change_seconds ?? 0;
  if (!item) return 0;
  if (before === undefined) return Math.max(first, item.change_seconds);
  if (before === at - 1 || items[before]?.formation === item.formation) return item.change_seconds;
  return Math.max(...items.slice(1).map((each) => each.change_seconds), item.change_seconds);
}

function secondsOfChoice(items: PlanItem[], chosen: number[]): number {
  return chosen.reduce((sum, at, place) => {
    const item = items[at];
    const change = changeAfter(items, at, chosen[place - 1]);
    return sum + (item ? (item.rest_seconds ?? 0) + change + item.takes_seconds : 0);
  }, 0);
}

// A family's first drill counts by its weight, a further one a little.
function worth(items: PlanItem[], chosen: number[], weights: Map<string, number>): number {
  const seen = new Set<string>();
  let sum = 0;
  for (const at of chosen) {
    const family = items[at]?.family ?? "";
    sum += seen.has(family) ? 0.5 : (weights.get(family) ?? 1);
    seen.add(family);
  }
  return sum;
}

export interface Fitted {
  items: PlanItem[]; // may be none
  seconds: number;
}

export function fitInto(planned: PlanItem[], seconds: number, weights: Map<string, number>): Fitted {
  const items = planned.slice(0, kMostItems);
  let best: { chosen: number[]; value: number; seconds: number } = { chosen: [], value: 0, seconds: 0 };
  for (let choice = 1; choice < 1 << items.length; choice++) {
    const chosen = items.map((_, at) => at).filter((at) => choice & (1 << at));
    const value = worth(items, chosen, weights);
    if (value < best.value) continue;
    const needed = secondsOfChoice(items, chosen);
    if (needed <= seconds && (value > best.value || needed < best.seconds)) best = { chosen, value, seconds: needed };
  }
  const fitted = best.chosen.map((at, place) => {
    const item = items[at] as PlanItem;
    return { ...item, change_seconds: changeAfter(items, at, best.chosen[place - 1]) };
  });
  return { items: startingAnew(fitted), seconds: best.seconds };
}

function startingAnew(items: PlanItem[]): PlanItem[] {
  let at = 0;
  return items.map((item) => {
    const starts_seconds = at + (item.rest_seconds ?? 0) + item.change_seconds;
    at = starts_seconds + item.takes_seconds;
    return { ...item, starts_seconds };
  });
}

// The one that takes least, where not even one fits: a little over is better than nothing.
function shortest(items: PlanItem[]): Fitted {
  const change = items[0]?.change_seconds ?? 0;
  const least = [...items].sort((one, other) => one.takes_seconds - other.takes_seconds).slice(0, 1);
  const alone = least.map((item) => ({ ...item, change_seconds: Math.max(change, item.change_seconds) }));
  return { items: startingAnew(alone), seconds: alone.reduce((sum, item) => sum + item.change_seconds + item.takes_seconds, 0) };
}

const kindLeftOut = ({ drill, dose }: PlanItem) => ({ kind: "left-out" as const, drill, from: dose, to: "", why: "" });

// The door's shortest plan, cut to so many minutes; as it was where that is no less.
export function cutTo(plan: PlanAnswer, minutes: number, weights: Map<string, number>, after: (minutes: number) => string): PlanAnswer {
  const slot_seconds = 60 * minutes;
  if (plan.outcome !== "optimal" || plan.slot_seconds <= slot_seconds) return plan;
  const fitted = fitInto(plan.items, slot_seconds, weights);
  const { items, seconds } = fitted.items.length > 0 ? fitted : shortest(plan.items);
  const gone = plan.items.filter(({ drill }) => !items.some((item) => item.drill === drill));
  const changes = [...(plan.changes ?? []).filter(({ drill }) => !gone.some((item) => item.drill === drill)), ...gone.map(kindLeftOut)];
  const finish = after(Math.ceil(seconds / 60));
  const cut: PlanAnswer = { ...plan, items, changes, slot_seconds, planned_seconds: seconds, margin_seconds: 0 };
  if (plan.time) cut.time = { ...plan.time, median_seconds: seconds, nine_in_ten_seconds: slot_seconds, finish, finish_nine_in_ten: after(Math.max(minutes, Math.ceil(seconds / 60))), saving: "" };
  return cut;
}
