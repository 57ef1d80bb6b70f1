// A squad's block as GET /api/squads/{squad}/plan gives it (docs/formats/block.md, schema/block-answer.schema.json).
import type { Because } from "./because.ts";

export interface PlannedDrill {
  drill: string;
  rung: string;
  sets: number;
  amount: number;
  steps?: number;
  done?: boolean; // of a session that is over
}

export interface BlockSession {
  week: number;
  date: string;
  start: string;
  minutes: number;
  strip: string;
  lanes: number[];
  turnout: number;
  days_to_match?: number;
  match_day: boolean;
  budget_steps?: number;
  planned_steps?: number;
  happened?: "no word" | "held" | "missed" | "cut short";
  minutes_had?: number;
  did_it?: "most" | "half" | "few";
  drills: PlannedDrill[];
}

export interface Load {
  used: number;
  ceiling: number;
}

export interface BlockWeek {
  week: number;
  spell: number;
  families: { family: string; credits: number; target: number; work_seconds: number }[];
  contacts?: Load;
  eccentric?: Load;
  hard_running_metres?: Load;
}

export interface Spell {
  first_week: number;
  weeks: number;
  drills: string[];
  comes_in: string[];
  leaves: string[];
}

export type WhatChanged = "comes in" | "left out" | "other dose";

export interface Rolling {
  today: string;
  sessions: { date: string; start: string; of: number; changes: { drill: string; what: WhatChanged }[]; why: string[]; because?: Because[] }[];
  swapped: { leaves?: string; comes_in: string; why: "closed" | "fixed" | "eccentric" }[];
  rungs: { drill: string; rung: string; sessions: number; why: "done by most" | "hardly done" }[];
  sentences: string[];
}

export interface MinutePrice {
  weekday: number; // 1 is Monday
  start: string;
  minutes: number; // below 0 are fewer
  before: number;
  after: number;
  sentence: string;
}

export interface SquadBlock {
  squad: string;
  name: string;
  routine: string;
  feasible: boolean;
  value: number;
  bound: number;
  gap_percent: number;
  spells: Spell[];
  sessions: BlockSession[];
  weeks: BlockWeek[];
  missed: { date: string; start: string; why: string; because?: Because }[];
  shortfalls: string[];
  minute_prices: MinutePrice[];
  rolling?: Rolling;
}

// The one squad of a plan, or nothing where none was made yet.
export function blockIn(answer: { plan?: unknown }): SquadBlock | undefined {
  return (answer.plan as { squads?: SquadBlock[] } | undefined)?.squads?.[0];
}

export const keyOfSession = ({ date, start }: { date: string; start: string }): string => `${date} ${start}`;
