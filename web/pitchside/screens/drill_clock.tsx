// The clock of one drill: a hold counts down, repetitions are counted, lanes go their own pace.
import { useEffect, useRef } from "preact/hooks";
import type { PlanItem } from "../../shared/engine/answers.ts";
import { momentAt, soundsOf, type Course, type Stretch } from "../evening/course.ts";
import { where } from "../evening/where.ts";
import { drillWords } from "../../shared/words/renderings.ts";
import { many, number, say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";
import { openMetronome } from "./sound.ts";
import { buzz, speak } from "./voice.ts";

const metronome = openMetronome();

function partWords(course: Course, stretch: Stretch): string {
  if (!course.paced) return say("run.lanes_go");
  switch (stretch.part) {
    case "tell":
      return say("run.telling");
    case "work":
      return stretch.beats > 0 ? say("run.reps") : say("run.hold");
    case "swap-sides":
      return say("run.swap_sides");
    case "swap-partners":
      return say("run.swap_partners");
    case "rest":
      return say("run.rest");
  }
}

export function phaseWords(course: Course, item: PlanItem, stretch: Stretch | undefined): string {
  if (!stretch) return say("run.over");
  const words = [partWords(course, stretch)];
  if (stretch.part === "work" && stretch.side) {
    words.push(say(stretch.side === "one" ? "run.one_side" : "run.other_side"));
  }
  if (course.paced && item.sets > 1 && stretch.part !== "tell") {
    words.push(say("run.set", { at: stretch.set, all: item.sets }));
  }
  return words.join(", ");
}

function clockText(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  return whole < 60 ? number(whole) : `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

interface ClockProps {
  pitch: Pitch;
  item: PlanItem;
  course: Course;
  seconds: number;
  paused: boolean;
  spoken: string; // what the voice says at the drill's beginning
}

export function DrillClock({ pitch, item, course, seconds, paused, spoken }: ClockProps) {
  const { sound, voice, vibration, language } = pitch.preferences.value;
  const moment = momentAt(course, seconds);
  const { stretch } = moment;
  const words = paused ? say("run.paused") : phaseWords(course, item, stretch);
  const phase = `${item.drill} ${stretch?.from ?? "over"}`;
  const last = useRef("");

  useEffect(() => {
    const shows = () => where(pitch.evening.peek(), Date.now())?.seconds ?? 0;
    if (sound && !paused) metronome.play(soundsOf(course), shows);
    else metronome.silence();
    return () => metronome.silence();
  }, [item.drill, item.rung, paused, sound]);

  useEffect(() => {
    if (paused || last.current === phase) return;
    const first = !last.current.startsWith(`${item.drill} `);
    last.current = phase;
    if (vibration) buzz(stretch?.part === "work" ? 300 : [120, 80, 120]);
    if (voice) speak(first ? spoken : words, first && !drillWords(item.drill) ? "en" : language);
  }, [phase, paused]);

  const counted = stretch !== undefined && stretch.beats > 0 && !paused;
  const count = counted ? say("run.of_reps", { at: moment.beat, all: stretch.beats }) : clockText(moment.left);
  return (
    <div class="clock">
      <span class="count" role="timer" aria-live="off" aria-label={counted ? count : many("seconds", moment.left)}>
        {count}
      </span>
      <span class="large" aria-live="assertive">
        {words}
      </span>
    </div>
  );
}
