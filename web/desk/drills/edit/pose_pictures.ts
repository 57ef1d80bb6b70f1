// Key poses as pictures that keep still while a joint is moved. The door draws a figure so that its picture just holds
// it; here two upright bodies stand at the ends, never shown, so that the ground and the scale stay where they are.
import type { FigureAnswer, FigureBody, FigureFrame, FigureProp } from "../../../shared/engine/answers.ts";
import { viewOf, type FigureDocument, type Pose, type View } from "../figure_document.ts";

const kLeastEnds = 1.3; // in statures, to either side
const kOverhead = 180;
const kHighest = 0.8; // how far off the ground the format lets a body be

export interface Asked {
  view: View;
  figure: FigureDocument; // for the door
  frames: number;
  first: number; // the frame of the first pose that was asked for
}

function endAt(view: View, shift: number, at: number): Pose {
  return { label: `end ${at}`, view, at, lift: kHighest, shift, angles: { shoulder: kOverhead } };
}

// What lies there in every pose lies in this one, and not at the ends.
function thingsOf({ props = [] }: FigureDocument, pose: Pose): Pick<Pose, "props"> {
  const all = [...props, ...(pose.props ?? [])];
  return all.length > 0 ? { props: all } : {};
}

// poses: positions in the figure, all of the same view.
export function picturesAsked(figure: FigureDocument, poses: number[]): Asked | undefined {
  const of = poses.map((index) => figure.pose[index]).filter((pose): pose is Pose => pose !== undefined);
  const [one] = of;
  if (!one) return undefined;
  const view = viewOf(figure, one);
  const ends = Math.max(kLeastEnds, ...of.map(({ shift = 0 }) => Math.min(2, Math.abs(shift) + 1.1)));
  const last = of.length + 1;
  const between = of.map(({ view: _, ...pose }, index): Pose => ({ ...pose, ...thingsOf(figure, pose), label: `shown ${index}`, at: (index + 1) / last }));
  const { facing } = figure;
  const turned = facing === "left" || facing === "away";
  return {
    view,
    figure: { view, ...(turned ? { facing: view === "side" ? "left" : "away" } : {}), cycle: "once", pose: [endAt(view, -ends, 0), ...between, endAt(view, ends, 1)] },
    frames: last + 1,
    first: 1,
  };
}

export interface Extent {
  left: number;
  right: number;
  top: number;
}

// What the bodies and the things about them need; the ground is the bottom.
export function extentOf(frames: FigureFrame[], props: FigureProp[] = []): Extent {
  const out: Extent = { left: Infinity, right: -Infinity, top: Infinity };
  const take = (x: number, y: number, radius: number) => {
    out.left = Math.min(out.left, x - radius);
    out.right = Math.max(out.right, x + radius);
    out.top = Math.min(out.top, y - radius);
  };
  const takeBody = ({ strokes, head }: FigureBody) => {
    for (const { x1, y1, x2, y2, width } of strokes) {
      take(x1, y1, width / 2);
      take(x2, y2, width / 2);
    }
    take(head.x, head.y, head.r);
  };
  for (const frame of frames) {
    takeBody(frame);
    if (frame.partner) takeBody(frame.partner);
    props.forEach(({ shapes }, index) => {
      const { x, y } = frame.props?.[index] ?? {};
      if (x === undefined || y === undefined) return;
      for (const { points = [], r = 0 } of shapes) {
        take(x, y, r);
        for (let at = 0; at + 1 < points.length; at += 2) take(x + (points[at] ?? 0), y + (points[at + 1] ?? 0), 0);
      }
    });
  }
  return out;
}

export function shownFrames(answer: FigureAnswer, asked: Asked): FigureFrame[] {
  return answer.frames.slice(asked.first, answer.frames.length - 1);
}
