// The drill's figure, moving: strokes of the door's frames. Where the door has no figure nothing is drawn.
import { useEffect, useState } from "preact/hooks";
import type { FigureAnswer, FigureFrame, FigureStroke } from "../../shared/engine/answers.ts";
import { say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

const kUsualSeconds = 2; // of a cycle that says nothing of its own
const kRestMilliseconds = 1200; // at the last picture of what is done once
const kLine = 14; // of the outline, in thousandths of stature

function wantsStill(pitch: Pitch): boolean {
  return pitch.preferences.value.still || matchMedia("(prefers-reduced-motion: reduce)").matches;
}

// Strokes of one side that follow each other are one limb: outlined as a whole, so that no joint is crossed out.
function limbsOf(strokes: FigureStroke[]): FigureStroke[][] {
  const limbs: FigureStroke[][] = [];
  for (const stroke of strokes) {
    const last = limbs[limbs.length - 1];
    const leg = (part: string) => ["thigh", "shank", "foot"].includes(part);
    const before = last?.[0];
    if (last && before && before.side === stroke.side && leg(before.part) === leg(stroke.part)) last.push(stroke);
    else limbs.push([stroke]);
  }
  return limbs;
}

function Limb({ strokes }: { strokes: FigureStroke[] }) {
  const ink = strokes[0]?.side === "far" ? "var(--rule)" : "var(--ink)";
  const drawn = (colour: string, thinner: number) =>
    strokes.map(({ x1, y1, x2, y2, width }, index) => (
      <line key={index} x1={x1} y1={y1} x2={x2} y2={y2} stroke={colour} stroke-width={Math.max(1, width - thinner)} />
    ));
  return (
    <g stroke-linecap="round">
      {drawn(ink, 0)}
      {drawn("var(--paper)", 2 * kLine)}
    </g>
  );
}

function Frame({ figure, frame, name }: { figure: FigureAnswer; frame: FigureFrame; name: string }) {
  const { x, y, r } = frame.head;
  return (
    <svg viewBox={`0 0 ${figure.width} ${figure.height + kLine}`} role="img" aria-label={say("say.drawing_of", { name })}>
      <line x1={0} x2={figure.width} y1={figure.ground} y2={figure.ground} stroke="var(--rule)" stroke-width={kLine / 2} />
      {limbsOf(frame.strokes).map((strokes, index) => (
        <Limb key={index} strokes={strokes} />
      ))}
      <circle cx={x} cy={y} r={r - kLine / 2} fill="var(--paper)" stroke="var(--ink)" stroke-width={kLine} />
    </svg>
  );
}

interface FigureProps {
  pitch: Pitch;
  drill: string;
  rung: string;
  name: string;
  seconds?: number; // of one repetition
  moving: boolean;
}

export function Figure({ pitch, drill, rung, name, seconds, moving }: FigureProps) {
  const [figure, setFigure] = useState<FigureAnswer | undefined>();
  const [at, setAt] = useState(0);
  useEffect(() => {
    let wanted = true;
    setFigure(undefined);
    setAt(0);
    void pitch.figure(drill, rung).then((found) => {
      if (wanted) setFigure(found);
    });
    return () => {
      wanted = false;
    };
  }, [drill, rung]);
  const still = wantsStill(pitch) || !moving;
  useEffect(() => {
    if (!figure || still || figure.frames.length < 2) return undefined;
    const doing = (seconds || kUsualSeconds) * 1000;
    const cycle = figure.cycle === "once" ? doing + kRestMilliseconds : doing;
    let asked = 0;
    const draw = (now: number) => {
      setAt(Math.min(figure.frames.length - 1, Math.floor(((now % cycle) / doing) * figure.frames.length)));
      asked = requestAnimationFrame(draw);
    };
    asked = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(asked);
  }, [figure, still]);
  const frame = figure?.frames[at] ?? figure?.frames[0];
  if (!figure || !frame) return null;
  return (
    <div class="figure">
      <Frame figure={figure} frame={frame} name={name} />
    </div>
  );
}
