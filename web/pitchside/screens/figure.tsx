// The drill's figure, moving: strokes of the door's frames. Where the door has no figure nothing is drawn.
import { useEffect, useState } from "preact/hooks";
import type { FigureAnswer, FigureFrame } from "../engine/answers.ts";
import { say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

const kUsualSeconds = 2; // of a cycle that says nothing of its own

function wantsStill(pitch: Pitch): boolean {
  return pitch.preferences.value.still || matchMedia("(prefers-reduced-motion: reduce)").matches;
}

function Frame({ figure, frame, name }: { figure: FigureAnswer; frame: FigureFrame; name: string }) {
  return (
    <svg viewBox={`0 0 ${figure.width} ${figure.height}`} role="img" aria-label={say("say.drawing_of", { name })}>
      {frame.strokes.map((stroke, index) => (
        <line
          key={index}
          x1={stroke.x1}
          y1={stroke.y1}
          x2={stroke.x2}
          y2={stroke.y2}
          stroke={stroke.side === "far" ? "var(--chalk)" : "var(--ink)"}
          stroke-width={stroke.width}
          stroke-linecap="round"
        />
      ))}
      <circle cx={frame.head.x} cy={frame.head.y} r={frame.head.r} fill="var(--paper)" stroke="var(--ink)" stroke-width={frame.head.r / 4} />
    </svg>
  );
}

interface FigureProps {
  pitch: Pitch;
  drill: string;
  rung: string;
  name: string;
  moving: boolean;
}

export function Figure({ pitch, drill, rung, name, moving }: FigureProps) {
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
    const cycle = (figure.seconds ?? kUsualSeconds) * 1000;
    let asked = 0;
    const draw = (now: number) => {
      setAt(Math.floor(((now % cycle) / cycle) * figure.frames.length));
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
