// How one drill goes by in time: telling, then holds or repetitions, a side at a time, with the changes between them.
import type { PlanItem } from "../../shared/engine/answers.ts";
import type { Drill } from "./drill.ts";

export type Part = "tell" | "work" | "swap-sides" | "swap-partners" | "rest";
export type Side = "one" | "other";

export interface Stretch {
  part: Part;
  from: number; // seconds in the item
  seconds: number;
  set: number; // from 1
  side?: Side;
  beats: number; // repetitions in it; 0 for a hold
}

export interface Course {
  stretches: Stretch[];
  tempo: number; // seconds a repetition, 0 where nothing is counted
  seconds: number;
  paced: boolean; // false: a lane, whose files set their own pace
}

export function courseOf(item: PlanItem, drill: Drill): Course {
  const { dose } = drill;
  const tempo = dose.kind === "reps" ? (dose.tempo_seconds ?? 0) : 0;
  const work = dose.kind === "reps" ? item.amount * tempo : item.amount;
  const stretches: Stretch[] = [];
  let at = 0;
  const add = (part: Part, seconds: number, set: number, beats = 0, side?: Side) => {
    if (seconds <= 0) return;
    const stretch: Stretch = { part, from: at, seconds, set, beats };
    stretches.push(side ? { ...stretch, side } : stretch);
    at += seconds;
  };
  if (dose.kind === "passes" || work <= 0) {
    add("work", item.takes_seconds, 1);
    return { stretches, tempo: 0, seconds: at, paced: false };
  }
  const turns = drill.pair && !drill.pair.both_at_once ? 2 : 1;
  const sides: (Side | undefined)[] = dose.sides ? ["one", "other"] : [undefined];
  const blocks: { set: number; turn: number; side?: Side }[] = [];
  for (let set = 1; set <= item.sets; set++) {
    for (let turn = 1; turn <= turns; turn++) {
      for (const side of sides) blocks.push(side ? { set, turn, side } : { set, turn });
    }
  }
  const between = (one: { set: number; turn: number }, next: { set: number; turn: number }): [Part, number] => {
    if (one.set !== next.set) return ["rest", dose.rest_seconds ?? 0];
    if (one.turn !== next.turn) return ["swap-partners", drill.pair?.swap_seconds ?? 0];
    return ["swap-sides", dose.side_change_seconds ?? 0];
  };
  const breaks = blocks.slice(1).map((block, index) => between(blocks[index] ?? block, block));
  const doing = blocks.length * work + breaks.reduce((sum, [, seconds]) => sum + seconds, 0);
  // What the plan gives beyond the doing is for telling: more where the drill is new, at least a breath.
  add("tell", Math.max(5, item.takes_seconds - doing), 1);
  blocks.forEach((block, index) => {
    add("work", work, block.set, dose.kind === "reps" ? item.amount : 0, block.side);
    const pause = breaks[index];
    if (pause) add(pause[0], pause[1], block.set);
  });
  return { stretches, tempo, seconds: at, paced: true };
}

export interface Moment {
  stretch?: Stretch; // absent when the course is over
  left: number; // whole seconds of the stretch
  beat: number; // the repetition under way, from 1; 0 where none is counted
}

export function momentAt(course: Course, seconds: number): Moment {
  const stretch = course.stretches.find((each) => seconds < each.from + each.seconds);
  if (!stretch) return { left: 0, beat: 0 };
  const inside = seconds - stretch.from;
  const beat = stretch.beats > 0 && course.tempo > 0 ? Math.floor(inside / course.tempo) + 1 : 0;
  return { stretch, left: Math.ceil(stretch.seconds - inside), beat };
}

export interface Sound {
  at: number; // seconds in the item
  sound: "begin" | "end" | "beat" | "soon";
}

// When to sound: at the start and end of each work, at each repetition, and in the last three seconds before a work.
export function soundsOf(course: Course): Sound[] {
  const sounds: Sound[] = [];
  if (!course.paced) return sounds;
  for (const stretch of course.stretches) {
    const end = stretch.from + stretch.seconds;
    if (stretch.part === "work") {
      sounds.push({ at: stretch.from, sound: "begin" });
      for (let beat = 1; beat < stretch.beats; beat++) {
        sounds.push({ at: stretch.from + beat * course.tempo, sound: "beat" });
      }
      sounds.push({ at: end, sound: "end" });
    } else {
      for (const before of [3, 2, 1]) if (stretch.seconds > before) sounds.push({ at: end - before, sound: "soon" });
    }
  }
  return sounds;
}
