// A week as squads by days: what was planned beside what was entered. What the server does not say stays unknown; an
// evening of which nobody wrote anything counts as unheard only where a plan says that it should have been.
import type { components } from "../../shared/api.ts";
import type { Because } from "../squad/because.ts";
import { weekFrom } from "./days.ts";

export type Entered = components["schemas"]["Week"]["evenings"][number];
export type SquadRow = components["schemas"]["SquadRow"];

export type OfSquads = components["schemas"]["WeekOfSquads"];
export type Tonight = OfSquads["squads"][number]["tonight"];

// Why an evening does not take place.
export interface FallsOut {
  why: string;
  because: Because | undefined;
}

export interface Planned {
  squad: string;
  day: string;
  start: string;
  minutes?: number;
  match_day: boolean;
  falls_out?: FallsOut;
}

// What the squads' plans have in that week, and what falls out of it.
export function plannedIn({ squads }: Pick<OfSquads, "squads">): Planned[] {
  return squads.flatMap(({ squad, planned, fell_out }) => [
    ...planned.map(({ match_day = false, ...each }) => ({ squad, match_day, ...each })),
    ...fell_out.map(({ day, start, why, because }) => ({ squad, day, start, match_day: false, falls_out: { why, because } })),
  ]);
}

// 'nobody': held, and nobody did the warm-up; 'begun': a phone began it and nobody wrapped it up.
export type State = "held" | "cut-short" | "not-run" | "nobody" | "begun" | "unheard" | "to-come" | "falls-out";

export interface Evening {
  squad: string;
  day: string;
  start: string;
  state: State;
  planned_minutes?: number; // absent where no plan has it
  minutes?: number;
  there?: number;
  did_it?: "most" | "half" | "few";
  needs_help: string[]; // drills by id
  match_day: boolean;
  by_two: boolean; // two coaches wrapped it up
  note?: string; // the coach's own words
  visited: boolean;
  falls_out?: FallsOut;
}

export interface SquadWeek {
  squad: string;
  name: string;
  days: Evening[][]; // seven, Monday first, each by start
  run: number; // held or cut short
  over: number; // all whose time has come
  minutes: number; // that were done
}

function stateOf(entered: Entered): State {
  if (entered.happened === "missed") return "not-run";
  if (entered.did_it === "nobody") return "nobody";
  return entered.happened ?? "begun";
}

function ofEntered(entered: Entered, planned: Planned | undefined): Evening {
  const evening: Evening = {
    squad: entered.squad,
    day: entered.day,
    start: entered.start,
    state: stateOf(entered),
    needs_help: entered.drills_that_need_help,
    match_day: planned?.match_day ?? false,
    by_two: entered.wrapped_up_by_two ?? false,
    visited: entered.visits > 0,
  };
  if (planned?.minutes !== undefined) evening.planned_minutes = planned.minutes;
  if (entered.note) evening.note = entered.note;
  if (entered.minutes !== undefined && evening.state !== "not-run") evening.minutes = entered.minutes;
  if (entered.there !== undefined) evening.there = entered.there;
  if (entered.did_it && entered.did_it !== "nobody") evening.did_it = entered.did_it;
  return evening;
}

function ofPlanned({ squad, day, start, minutes, match_day, falls_out }: Planned, now: string): Evening {
  const evening: Evening = { squad, day, start, state: "to-come", needs_help: [], match_day, by_two: false, visited: false };
  if (falls_out !== undefined) return { ...evening, state: "falls-out", falls_out };
  if (`${day} ${start}` < now) evening.state = "unheard";
  return minutes === undefined ? evening : { ...evening, planned_minutes: minutes };
}

const keyOf = ({ squad, day, start }: { squad: string; day: string; start: string }): string => `${squad} ${day} ${start}`;

// Evenings of any time, in the order of day and start. now: '2026-11-26 18:05'.
export function eveningsOf(entered: Entered[], planned: Planned[], now: string): Evening[] {
  const plans = new Map(planned.map((each) => [keyOf(each), each]));
  const told = new Set(entered.map(keyOf));
  const all = [
    ...entered.map((each) => ofEntered(each, plans.get(keyOf(each)))),
    ...planned.filter((each) => !told.has(keyOf(each))).map((each) => ofPlanned(each, now)),
  ];
  return all.sort((one, other) => (`${one.day} ${one.start}` < `${other.day} ${other.start}` ? -1 : 1));
}

export const isOver = ({ state }: Evening): boolean => state !== "to-come" && state !== "falls-out";
export const wasRun = ({ state }: Evening): boolean => state === "held" || state === "cut-short";

export function weekTable(squads: Pick<SquadRow, "id" | "name">[], evenings: Evening[], monday: string): SquadWeek[] {
  const days = weekFrom(monday);
  return squads.map(({ id, name }) => {
    const own = evenings.filter((evening) => evening.squad === id && days.includes(evening.day));
    const run = own.filter(wasRun);
    return {
      squad: id,
      name,
      days: days.map((day) => own.filter((evening) => evening.day === day)),
      run: run.length,
      over: own.filter(isOver).length,
      minutes: run.reduce((sum, { minutes = 0 }) => sum + minutes, 0),
    };
  });
}

export interface Sums {
  over: number;
  run: number; // 'cut_short' of them over before their time
  cut_short: number;
  not_run: number;
  unheard: number;
  minutes: number;
}

export function sumsOf(rows: SquadWeek[]): Sums {
  const all = rows.flatMap(({ days }) => days.flat());
  const count = (...states: State[]) => all.filter(({ state }) => states.includes(state)).length;
  return {
    over: all.filter(isOver).length,
    run: count("held", "cut-short"),
    cut_short: count("cut-short"),
    not_run: count("not-run", "nobody"),
    unheard: count("unheard", "begun"),
    minutes: rows.reduce((sum, row) => sum + row.minutes, 0),
  };
}
