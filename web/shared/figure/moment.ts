// Where in its cycle a figure is at a time, and the picture of that moment: between two of the door's frames every point
// goes straight, as the door says it may (docs/formats/door.md).
import type { FigureAnswer, FigureBody, FigureFrame, PropPlace } from "../engine/answers.ts";

export const kUsualSeconds = 2; // of a cycle that says nothing of its own
const kRestMilliseconds = 1200; // at the last picture of what is done once

// How many frames have passed, a fraction among them: from 0 to below their number.
export function momentOf(figure: Pick<FigureAnswer, "cycle" | "frames">, milliseconds: number, seconds: number): number {
  const count = figure.frames.length;
  if (count < 2 || figure.cycle === "hold") return 0;
  const doing = seconds * 1000;
  if (figure.cycle === "loop") return ((milliseconds % doing) / doing) * count;
  const within = milliseconds % (doing + kRestMilliseconds);
  return Math.min(1, within / doing) * (count - 1);
}

type Mixed = (a: number, b: number) => number;

function bodyBetween(from: FigureBody, to: FigureBody, mixed: Mixed): FigureBody {
  const strokes = from.strokes.map((stroke, index) => {
    const next = to.strokes[index];
    if (!next) return stroke;
    return {
      ...stroke,
      x1: mixed(stroke.x1, next.x1), y1: mixed(stroke.y1, next.y1),
      x2: mixed(stroke.x2, next.x2), y2: mixed(stroke.y2, next.y2),
    };
  });
  return { strokes, head: { x: mixed(from.head.x, to.head.x), y: mixed(from.head.y, to.head.y), r: from.head.r } };
}

// What comes into the picture or leaves it does so with the frame.
function placeBetween(from: PropPlace, to: PropPlace | undefined, mixed: Mixed): PropPlace {
  const out: PropPlace = {};
  for (const end of ["x", "y", "x2", "y2"] as const) {
    const at = from[end];
    if (at !== undefined) out[end] = mixed(at, to?.[end] ?? at);
  }
  return out;
}

export function frameAt(figure: Pick<FigureAnswer, "cycle" | "frames">, moment: number): FigureFrame | undefined {
  const { frames, cycle } = figure;
  const before = Math.min(frames.length - 1, Math.floor(moment));
  const from = frames[before];
  const to = frames[before + 1] ?? (cycle === "loop" ? frames[0] : undefined);
  const part = moment - before;
  if (!from || !to || part <= 0) return from;
  const mixed: Mixed = (a, b) => a + (b - a) * part;
  const out: FigureFrame = bodyBetween(from, to, mixed);
  if (from.partner) out.partner = to.partner ? bodyBetween(from.partner, to.partner, mixed) : from.partner;
  if (from.props) out.props = from.props.map((place, index) => placeBetween(place, to.props?.[index], mixed));
  return out;
}
