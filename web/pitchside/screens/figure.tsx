// The drill's figure on the phone, moving. Where the door has no figure nothing is drawn.
import { useEffect, useState } from "preact/hooks";
import type { FigureAnswer } from "../../shared/engine/answers.ts";
import { MovingFigure, wantsLessMotion } from "../../shared/figure/moving.tsx";
import { say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

// Twelve pictures a second: twice as many cost a slow phone's main thread 10 ms of a frame in place of 6 (docs/model/phone-figures.md).
const kRestMilliseconds = 80;
const kRestOfTwoMilliseconds = 150; // with a partner there is twice as much to draw

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
  useEffect(() => {
    let wanted = true;
    setFigure(undefined);
    void pitch.figure(drill, rung).then((found) => {
      if (wanted) setFigure(found);
    });
    return () => {
      wanted = false;
    };
  }, [drill, rung]);
  if (!figure || figure.frames.length === 0) return null;
  const still = pitch.preferences.value.still || wantsLessMotion() || !moving;
  return (
    <div class="figure">
      <MovingFigure figure={figure} label={say("say.drawing_of", { name })} seconds={seconds} still={still} rest={figure.frames[0]?.partner ? kRestOfTwoMilliseconds : kRestMilliseconds} />
    </div>
  );
}
