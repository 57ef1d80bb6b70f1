// A figure in motion. The clock writes into the drawing itself, past the components: a frame costs the main thread only
// the points that moved.
import { useLayoutEffect, useRef } from "preact/hooks";
import type { FigureAnswer, FigureBody, FigureFrame, PropPlace } from "../engine/answers.ts";
import { FigureDrawing } from "./drawing.tsx";
import { pathOfBone } from "./limbs.ts";
import { frameAt, kUsualSeconds, momentOf } from "./moment.ts";
import { placeWritten } from "./props.tsx";

export function wantsLessMotion(): boolean {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}

// A drawn thing's attributes, written where they changed.
function writerOf(drawn: Element): (name: string, value: string) => void {
  const was: { [attribute: string]: string } = {};
  return (name, value) => {
    if (was[name] !== value) drawn.setAttribute(name, (was[name] = value));
  };
}

function bodyPainter(drawn: Element): (body: FigureBody) => void {
  const bones = [...drawn.querySelectorAll<SVGPathElement>("[data-stroke]")].map((path) => ({ first: Number(path.dataset.stroke), count: Number(path.dataset.count), write: writerOf(path) }));
  const head = [...drawn.querySelectorAll("[data-head]")].map(writerOf);
  return (body) => {
    for (const { write, ...bone } of bones) write("d", pathOfBone(body.strokes, bone));
    for (const write of head) {
      write("cx", String(Math.round(body.head.x)));
      write("cy", String(Math.round(body.head.y)));
    }
  };
}

function propPainter(drawn: Element): (place: PropPlace) => void {
  const write = writerOf(drawn);
  return (place) => {
    for (const [name, value] of Object.entries(placeWritten(place))) write(name, value);
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
