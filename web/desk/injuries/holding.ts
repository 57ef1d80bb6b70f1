// What of the entries about one player may still hold back, and where a way back stands: read from the entries, to know what
// can be done next. What holds indeed is the server's to say (docs/care/entries.md), and stands beside it.
import type { SeenEntry } from "../../shared/api.ts";
import steps from "./return_steps.json";

const kHolds = new Set(["hurt", "soreness", "restriction"]);

const textAt = (entry: SeenEntry, key: string): string => {
  const value = entry[key];
  return typeof value === "string" ? value : "";
};
const listAt = (entry: SeenEntry, key: string): string[] => {
  const value = entry[key];
  return Array.isArray(value) ? value.filter((one): one is string => typeof one === "string") : [];
};

// Without what was withdrawn: a lifting, a clearance or a step that somebody took back counts no more.
function standing(entries: SeenEntry[]): SeenEntry[] {
  const withdrawn = new Set(entries.filter(({ kind }) => kind === "withdrawn").map((one) => textAt(one, "corrects")));
  return [...entries].sort((one, other) => one.receipt - other.receipt).filter(({ id, kind }) => !withdrawn.has(id) || kHolds.has(kind));
}

export interface Held {
  id: string;
  kind: "hurt" | "soreness" | "restriction";
  received: string;
  places: string[]; // of the body; none where it is not known, or where nothing is left out but all of it
  instruction: string;
  until: string;
  review: string;
  cleared_by: string; // a named clinician, or nobody yet
}

export function heldOf(entries: SeenEntry[]): Held[] {
  const all = standing(entries);
  const lifted = new Set(all.filter(({ kind }) => kind === "lifted").flatMap((one) => listAt(one, "names")));
  return all
    .filter(({ id, kind }) => kHolds.has(kind) && !lifted.has(id))
    .map((one) => {
      const about = (kind: string) => all.filter((other) => other.kind === kind && listAt(other, "names").includes(one.id)).at(-1);
      const cleared = about("clearance");
      const reviewed = about("reviewed");
      return {
        id: one.id, kind: one.kind as Held["kind"], received: one.received, places: textAt(one, "place") ? [textAt(one, "place")] : listAt(one, "areas"), instruction: textAt(one, "instruction"), until: textAt(one, "until"),
        review: reviewed ? textAt(reviewed, "review") : textAt(one, "review"), cleared_by: cleared ? textAt(cleared, "clinician") : "",
      };
    });
}

export const kCourses = Object.keys(steps) as (keyof typeof steps)[];
export type Course = (typeof kCourses)[number];

export interface WayStep {
  step: string;
  gate: string; // before it, or ""
  begun: string; // when that was entered last, or ""
  gate_by: string; // who gave the clearance that was entered, or ""
}
export interface Way {
  id: string; // the entry that opened it
  course: Course;
  opened: string;
  carries: string[];
  steps: WayStep[];
  next: WayStep | undefined;
}

export function waysOf(entries: SeenEntry[]): Way[] {
  const all = standing(entries);
  const lifted = new Set(all.filter(({ kind }) => kind === "lifted").flatMap((one) => listAt(one, "names")));
  return all
    .filter((one) => one.kind === "course-opened" && !lifted.has(one.id) && Object.hasOwn(steps, textAt(one, "course")))
    .map((one) => {
      const course = textAt(one, "course") as Course;
      const of = (kind: string, key: string, value: string) => all.filter((other) => other.kind === kind && textAt(other, "course") === one.id && textAt(other, key) === value).at(-1);
      const way = steps[course].map(({ step, gate }): WayStep => {
        const clearance = gate ? of("clearance", "gate", gate) : undefined;
        return { step, gate, begun: of("step-begun", "step", step)?.received ?? "", gate_by: clearance ? textAt(clearance, "clinician") : "" };
      });
      const reached = way.map(({ begun }) => begun !== "").lastIndexOf(true);
      return { id: one.id, course, opened: one.received, carries: listAt(one, "carries"), steps: way, next: way[reached + 1] };
    });
}

// A reason of the server's that names the entry it comes from.
export const isOfAnEntry = (reason: string): boolean => /[0-9a-f]{8}-[0-9a-f-]{27}/.test(reason);
