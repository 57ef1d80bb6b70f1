// A figure in motion. The clock writes into the drawing itself, past the components: a frame costs the main thread only
// the points that moved.
import { useLayoutEffect, useRef } from "preact/hooks";
import type { FigureAnswer, FigureBody, FigureFrame, PropPlace } from "../engine/answers.ts";
import { FigureDrawing } from "./drawing.tsx";
import { frameAt, kUsualSeconds, momentOf } from "./moment.ts";
import { placeWritten } from "./props.tsx";

export function wantsLessMotion(): boolean {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}

// One number of a drawing, written where it changed: in whole thousandths of stature, which is finer than a screen shows.
interface Written {
  element: Element;
  name: string;
  was: number;
}
const written = (element: Element, name: string): Written => ({ element, name, was: NaN });

function write(one: Written, value: number): void {
  const whole = Math.round(value);
  if (whole === one.was) return;
  one.was = whole;
  one.element.setAttribute(one.name, String(whole));
}

function bodyPainter(drawn: Element): (body: FigureBody) => void {
  const lines = [...drawn.querySelectorAll<SVGLineElement>("[data-stroke]")].map((line) => ({
    stroke: Number(line.dataset.stroke), x1: written(line, "x1"), y1: written(line, "y1"), x2: written(line, "x2"), y2: written(line, "y2"),
  }));
  const head = [...drawn.querySelectorAll("[data-head]")].map((circle) => ({ x: written(circle, "cx"), y: written(circle, "cy") }));
  return (body) => {
    for (const line of lines) {
      const at = body.strokes[line.stroke];
      if (!at) continue;
      write(line.x1, at.x1);
      write(line.y1, at.y1);
      write(line.x2, at.x2);
      write(line.y2, at.y2);
    }
    for (const { x, y } of head) {
      write(x, body.head.x);
      write(y, body.head.y);
    }
  };
}

function propPainter(drawn: Element): (place: PropPlace) => void {
  const was: { [attribute: string]: string } = {};
  return (place) => {
    for (const [name, value] of Object.entries(placeWritten(place))) {
      if (was[name] !== value) drawn.setAttribute(name, (was[name] = value));
    }
  };
}

// Writes a frame's points into what FigureDrawing made of another frame of the same figure.
function painterOf(svg: SVGSVGElement): (frame: FigureFrame) => void {
  const painterIn = (name: string) => [...svg.querySelectorAll(`[data-body="${name}"]`)].map(bodyPainter)[0];
  const figure = painterIn("figure");
  const partner = painterIn("partner");
  const props = [...svg.querySelectorAll<SVGElement>("[data-prop]")].map((drawn) => ({ index: Number(drawn.dataset.prop), paint: propPainter(drawn) }));
  return (frame) => {
    figure?.(frame);
    if (frame.partner) partner?.(frame.partner);
    for (const { index, paint } of props) paint(frame.props?.[index] ?? {});
  };
}

// The card's picture.
const stillFrame = ({ frames, main }: FigureAnswer): FigureFrame | undefined => frames[main] ?? frames[0];

interface Moving {
  figure: FigureAnswer;
  label: string;
  seconds?: number | undefined; // of one cycle
  still: boolean;
  rest?: number; // milliseconds between two pictures at least; each of the screen's own if not said
}

export function MovingFigure({ figure, label, seconds, still, rest = 0 }: Moving) {
  const svg = useRef<SVGSVGElement>(null);
  // Before the screen is painted: the lines may still stand where the clock put them for the figure before.
  useLayoutEffect(() => {
    if (!svg.current) return undefined;
    const paint = painterOf(svg.current);
    const first = stillFrame(figure);
    if (first) paint(first);
    if (still || figure.frames.length < 2) return undefined;
    let asked = 0;
    let painted = -Infinity;
    const draw = (now: number) => {
      asked = requestAnimationFrame(draw);
      if (now - painted < rest) return;
      painted = now;
      const frame = frameAt(figure, momentOf(figure, now, seconds || kUsualSeconds));
      if (frame) paint(frame);
    };
    asked = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(asked);
  }, [figure, seconds, still, rest]);
  const first = stillFrame(figure);
  return first ? <FigureDrawing svg={svg} figure={figure} frame={first} label={label} /> : null;
}
