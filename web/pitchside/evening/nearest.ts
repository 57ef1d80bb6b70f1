// What could stand in for a drill, and what that costs: each candidate is planned by the door, pinned in its place.
import type { PlanAnswer } from "../../shared/engine/answers.ts";
import type { EveningPackage } from "../package/evening_package.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import type { EveningState, Facts } from "./evening_state.ts";

export const kMostAsked = 12; // candidates that are planned
export const kEnough = 5; // of them can be done: further ones are not asked
const kShown = 2;

const kTier = 10000; // seconds: the same family and phase before anything else
const kUncovered = 1200; // a family that is no longer touched
const kOtherDrill = 60; // another drill that is out or new for it

// The same family and phase first, then the same family, then the same phase and formation.
export function candidatesFor(pack: EveningPackage, state: EveningState, drill: string): { drill: string; tier: number }[] {
  const drills = (pack.catalogue["drills"] ?? []) as DoorTable[];
  const own = drills.find((each) => each["id"] === drill);
  if (!own) return [];
  const taken = new Set([drill, ...state.facts.bans, ...(state.plan?.items ?? []).map((item) => item.drill)]);
  const tierOf = (each: DoorTable): number => {
    if (each["family"] === own["family"]) return each["phase"] === own["phase"] ? 0 : 1;
    return each["phase"] === own["phase"] && each["formation"] === own["formation"] ? 2 : 3;
  };
  return drills
    .map((each) => ({ drill: String(each["id"]), tier: tierOf(each) }))
    .filter((each) => each.tier < 3 && !taken.has(each.drill))
    .sort((one, other) => one.tier - other.tier);
}

export function swapped(facts: Facts, out: string, by: string): Partial<Facts> {
  const without = (list: string[], drill: string) => list.filter((each) => each !== drill);
  return {
    bans: [...without(without(facts.bans, by), out), out],
    pins: [...without(without(facts.pins, out), by), by],
    swaps: { ...facts.swaps, [out]: by },
  };
}

// The drill may be done again, and what stood in for it need not be.
export function unswapped(facts: Facts, out: string): Partial<Facts> {
  const { [out]: by, ...swaps } = facts.swaps ?? {};
  return { bans: facts.bans.filter((each) => each !== out), pins: facts.pins.filter((each) => each !== by), swaps };
}

export interface Alternative {
  drill: string;
  dose: string;
  sets: number;
  amount: number;
  seconds: number; // later than now; below zero: earlier
  finish: string | undefined;
  out: string[]; // drills that go besides
  come: string[]; // drills that come besides
  less: string[]; // drills of which less is done
  uncovered: string[]; // families that are no longer touched
  far: number; // the less, the nearer
}

// Absent where the drill cannot be done tonight.
export function alternativeOf(before: PlanAnswer, after: PlanAnswer, out: string, candidate: { drill: string; tier: number }): Alternative | undefined {
  const own = after.items.find((item) => item.drill === candidate.drill);
  if (after.outcome !== "optimal" || !own) return undefined;
  const others = after.items.filter((item) => item.drill !== candidate.drill);
  const had = before.items.filter((item) => item.drill !== out);
  const gone = had.filter((item) => !others.some(({ drill }) => drill === item.drill)).map(({ drill }) => drill);
  const come = others.filter((item) => !had.some(({ drill }) => drill === item.drill)).map(({ drill }) => drill);
  const less = others
    .filter((item) => had.some(({ drill, sets, amount }) => drill === item.drill && sets * amount > item.sets * item.amount))
    .map(({ drill }) => drill);
  const open = (plan: PlanAnswer) => (plan.uncovered ?? []).map(({ family }) => family);
  const uncovered = open(after).filter((family) => !open(before).includes(family));
  const seconds = after.planned_seconds - before.planned_seconds;
  const far =
    kTier * candidate.tier + kUncovered * uncovered.length + kOtherDrill * (gone.length + come.length + less.length) + Math.abs(seconds);
  return { drill: candidate.drill, dose: own.dose, sets: own.sets, amount: own.amount, seconds, finish: after.time?.finish, out: gone, come, less, uncovered, far };
}

export function nearest(found: Alternative[]): Alternative[] {
  return [...found].sort((one, other) => one.far - other.far).slice(0, kShown);
}
