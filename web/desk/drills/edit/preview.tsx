// The drill as it moves now: while a figure cannot be drawn the last that could goes on.
import { useEffect, useId, useState } from "preact/hooks";
import type { FigureAnswer } from "../../../shared/engine/answers.ts";
import { MovingFigure, wantsLessMotion } from "../../../shared/figure/moving.tsx";
import type { FigureDocument } from "../figure_document.ts";
import { askFigure } from "../figures.ts";
import { say } from "../words.ts";
import { faultWords } from "./fields.tsx";

export function Preview({ figure, name, seconds }: { figure: FigureDocument | undefined; name: string; seconds: number }) {
  const kind = `preview ${useId()}`; // it may stand in two places
  const [answer, setAnswer] = useState<FigureAnswer | undefined>();
  const [why, setWhy] = useState<string | undefined>();
  const [still, setStill] = useState(wantsLessMotion());
  useEffect(() => {
    if (!figure) return undefined;
    let wanted = true;
    void askFigure(still ? { ...figure, cycle: "hold" } : figure, { kind }).then((had) => {
      if (!wanted || had.answer === "dropped") return;
      if (had.answer === "figure") setAnswer(had);
      setWhy(had.answer === "faults" && had.faults[0] ? faultWords(had.faults[0]) : undefined);
    });
    return () => {
      wanted = false;
    };
  }, [figure, still]);
  return (
    <div class="preview">
      <div class="large-figure">{answer ? <MovingFigure figure={answer} label={say("figure.of", { name })} seconds={seconds} still={still} /> : null}</div>
      {why ? <p class="fault">{say("pose.not_drawn", { why })}</p> : null}
      <button type="button" onClick={() => setStill(!still)}>
        {say(still ? "figure.move" : "figure.hold")}
      </button>
    </div>
  );
}
