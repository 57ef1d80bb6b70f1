// A drill's figure on the desk: small and still in a list, large and moving on its page.
import { FigureDrawing } from "../../shared/figure/drawing.tsx";
import { MovingFigure } from "../../shared/figure/moving.tsx";
import { kUsualSeconds } from "../../shared/figure/moment.ts";
import type { DrillDocument } from "./drill_document.ts";
import type { FigureDocument } from "./figure_document.ts";
import { useFigure } from "./figures.ts";
import { say } from "./words.ts";

// Beside the drill's name: the picture says nothing to a reader that the name does not.
export function SmallFigure({ figure }: { figure: FigureDocument | undefined }) {
  const answer = useFigure(figure, false);
  const frame = answer?.frames[0];
  return (
    <span class="small-figure" aria-hidden="true">
      {answer && frame ? <FigureDrawing figure={answer} frame={frame} label="" /> : null}
    </span>
  );
}

export function secondsOf(drill: Pick<DrillDocument, "dose">): number {
  return drill.dose.kind === "reps" && drill.dose.tempo_seconds ? drill.dose.tempo_seconds : kUsualSeconds;
}

interface Large {
  figure: FigureDocument | undefined;
  name: string;
  seconds: number;
  still: boolean;
}

export function LargeFigure({ figure, name, seconds, still }: Large) {
  const answer = useFigure(figure, !still); // held, it is the card's picture
  return (
    <div class="large-figure">
      {answer ? <MovingFigure figure={answer} label={say("figure.of", { name })} seconds={seconds} still={still} /> : null}
    </div>
  );
}
