// Figures as the door draws them, in its worker. A picture once had of a drill is kept as long as the drill is.
import { useEffect, useState } from "preact/hooks";
import type { FigureAnswer } from "../../shared/engine/answers.ts";
import { openEngine, type DoorRequest, type Engine } from "../../shared/engine/engine.ts";
import { door, engineWorker } from "../shell/places.ts";
import type { DrillDocument } from "./drill_document.ts";
import type { FigureDocument } from "./figure_document.ts";

const kFrames = 24;
let engine: Engine | undefined;
let kinds = 0;

function theEngine(): Engine {
  engine ??= openEngine({ worker: engineWorker, door });
  return engine;
}

// kind: of questions of one kind only the newest is answered.
export async function askFigure(figure: FigureDocument, { frames = kFrames, kind = `figure ${++kinds}` } = {}) {
  const request = { request: "figure", drill: { figure }, rung: "any", frames, props: true } as unknown as DoorRequest & { request: "figure" };
  return theEngine().ask(request, kind);
}

export function figureOf(drill: DrillDocument, rung?: string): FigureDocument | undefined {
  return (rung !== undefined && drill.rung_figure?.[rung]) || drill.figure;
}

const kept = new WeakMap<FigureDocument, Map<boolean, Promise<FigureAnswer | undefined>>>();

function drawn(figure: FigureDocument, moving: boolean): Promise<FigureAnswer | undefined> {
  const of = kept.get(figure) ?? new Map<boolean, Promise<FigureAnswer | undefined>>();
  kept.set(figure, of);
  const there = of.get(moving);
  if (there) return there;
  // Held, a figure is its card's one picture.
  const asked = askFigure(moving ? figure : { ...figure, cycle: "hold" }, moving ? {} : { frames: 1 }).then((answer) => {
    if (answer.answer === "figure") return answer;
    of.delete(moving);
    return undefined;
  });
  of.set(moving, asked);
  return asked;
}

export function useFigure(figure: FigureDocument | undefined, moving: boolean): FigureAnswer | undefined {
  const [had, setHad] = useState<{ of: FigureDocument; moving: boolean; answer: FigureAnswer | undefined } | undefined>();
  useEffect(() => {
    let wanted = true;
    if (figure) void drawn(figure, moving).then((answer) => wanted && setHad({ of: figure, moving, answer }));
    return () => {
      wanted = false;
    };
  }, [figure, moving]);
  return had && had.of === figure && had.moving === moving ? had.answer : undefined;
}
