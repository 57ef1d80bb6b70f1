// One evening as this phone knows it. It is plain data: kept as JSON, and after a reload the run goes on from it.
import type { PlanAnswer } from "../../shared/engine/answers.ts";

export type Surface = "wet" | "hard" | "uneven" | "dark";
export type Kit = "cones" | "balls" | "mats";
export type Mark = "done" | "skipped" | "easier" | "harder" | "needs-help";

export interface Sore {
  player: string;
  points: number; // 0 to 10
  place?: string; // an area of the body as in docs/formats/drill.md
}

// What is different tonight. What is absent stands as the package has it.
export interface Facts {
  turnout?: number | undefined; // counted; else those who are here by name
  named?: boolean; // somebody ticked names
  away: string[]; // ids, all of them: those known before as well
  late: number;
  minutes?: number; // left, until the slot's end
  surface?: Surface[];
  lanes?: number;
  length_metres?: number;
  missing: Kit[];
  sore: Sore[];
  bans: string[]; // drills that are not done tonight
  pins: string[]; // drills that are
  swaps?: Record<string, string>; // of the bans: which drill was pinned in its place
}

// Where the run is. The clock of a drill goes on while the phone is asleep or rings: it is wall-clock time.
export interface Run {
  began: number; // wall-clock milliseconds, like all times here
  ends: number; // when the slot is over
  item: number;
  item_since: number; // when the item was come to, or its clock last let go on
  counted: number; // milliseconds before that
  paused: boolean;
  paused_total: number; // milliseconds in which the clock stood
  paused_since?: number;
}

export type DidIt = "most" | "half" | "few" | "nobody";

export interface WrapUp {
  there: number;
  did_it?: DidIt;
  needs_help: string[]; // drills
  minutes?: number; // as entered
  sent: boolean;
}

export type Screen = "tonight" | "lay-out" | "run" | "wrap-up" | "finished";

// An entry as it is kept, so that a later one can name it. It stays in the list when it was taken back.
export interface Entered {
  id: string;
  kind: "attendance" | "wrap-up" | "drill-marked" | "hurt" | "soreness";
  about: string; // the player or the drill; empty for the session
  mark?: Mark;
  said: string; // its content as JSON, to see whether a correction says anything else
  taken_back?: boolean;
}

export interface EveningState {
  squad: string;
  day: string;
  start: string; // 18:00
  screen: Screen;
  facts: Facts;
  plan?: PlanAnswer; // in force
  before?: PlanAnswer; // the one that it took the place of, for telling what changed
  run?: Run;
  hurt: string[]; // ids: were here, and do nothing more tonight
  marks: Record<string, Mark[]>; // by drill, each once
  wrap_up: WrapUp;
  entered?: Entered[]; // what can be taken back or corrected, the oldest first
}

export function newEvening(squad: string, day: string, start: string, away: string[] = []): EveningState {
  return {
    squad,
    day,
    start,
    screen: "tonight",
    facts: { away, late: 0, missing: [], sore: [], bans: [], pins: [] },
    hurt: [],
    marks: {},
    wrap_up: { there: 0, needs_help: [], sent: false },
  };
}
