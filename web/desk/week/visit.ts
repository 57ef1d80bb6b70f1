// What was seen on a visit, as the answers of an entry, and the drills and evenings it may be about.
import type { SquadBlock } from "../squad/block.ts";
import { isOver, type Evening } from "./week_table.ts";

export const kForm = "visit-2026-11"; // the questions, so that a later form is told from this one

export interface SeenDrill {
  did_it?: "most" | "half" | "few";
  help: string; // what would help, in the lead's words
}
export interface Seen {
  drills: Record<string, SeenDrill>;
  taught: string; // and to whom of the coaches
  next: string; // agreed for next time
}

// 'did-it side-plank most', 'help side-plank the count', 'taught ...', 'next ...': a line each, without what was left open.
export function answersOf({ drills, taught, next }: Seen): string[] {
  const of_drills = Object.entries(drills).flatMap(([drill, { did_it, help }]) => [did_it ? `did-it ${drill} ${did_it}` : "", help.trim() ? `help ${drill} ${help.trim()}` : ""]);
  return [...of_drills, taught.trim() ? `taught ${taught.trim()}` : "", next.trim() ? `next ${next.trim()}` : ""].filter((line) => line !== "");
}

// In the order in which they were planned; none where no plan has that evening.
export function drillsOf(block: SquadBlock | undefined, day: string, start: string): string[] {
  const session = block?.sessions.find((one) => one.date === day && one.start.slice(0, 5) === start.slice(0, 5));
  return [...new Set(session?.drills.map(({ drill }) => drill) ?? [])];
}

// Evenings that somebody can have seen, the latest first.
export function seenEvenings(evenings: Evening[], squad: string): Evening[] {
  return evenings.filter((evening) => evening.squad === squad && isOver(evening) && evening.state !== "not-run").reverse();
}
