// Which point of a drawn body turns which angle, and by how much a drag turns it. Points come from the door's strokes; the
// angle turns about the point nearer the trunk, as in core/figure/body.cpp.
import type { FigureFrame, FigureStroke } from "../../../shared/engine/answers.ts";
import type { View } from "../figure_document.ts";

export interface Place {
  x: number;
  y: number;
}
export interface Handle {
  angle: string; // 'knee_far'
  at: Place;
  about: Place;
  sign: 1 | -1; // of a turn clockwise in the picture
}

interface Part {
  part: string;
  nth?: number; // of the strokes of this part and side
  base: string;
  sign: 1 | -1; // of a clockwise turn, for the near side or the left one of a figure that is not turned round
}
// What hangs turns counterclockwise as it goes forward; what stands upright clockwise.
const kLimbs: Record<View, Part[]> = {
  side: [
    { part: "thigh", base: "hip", sign: -1 }, { part: "shank", base: "knee", sign: 1 }, { part: "foot", base: "ankle", sign: -1 },
    { part: "upper-arm", base: "shoulder", sign: -1 }, { part: "forearm", base: "elbow", sign: -1 }, { part: "hand", base: "wrist", sign: -1 },
  ],
  front: [
    { part: "thigh", base: "hip", sign: -1 }, { part: "shank", base: "knee", sign: -1 },
    { part: "upper-arm", base: "shoulder", sign: -1 }, { part: "forearm", base: "elbow", sign: 1 }, { part: "hand", base: "wrist", sign: 1 },
  ],
};
const kMiddle: Part[] = [
  { part: "trunk", nth: 0, base: "trunk", sign: 1 },
  { part: "trunk", nth: 1, base: "spine", sign: 1 },
  { part: "neck", base: "neck", sign: 1 },
];

const from = ({ x1, y1 }: FigureStroke): Place => ({ x: x1, y: y1 });
const to = ({ x2, y2 }: FigureStroke): Place => ({ x: x2, y: y2 });

// turned: the figure faces left, or is seen from behind.
export function handlesOf(view: View, frame: FigureFrame, turned: boolean): Handle[] {
  const strokes = (part: string, side?: string) => frame.strokes.filter((stroke) => stroke.part === part && stroke.side === side);
  const handles: Handle[] = [];
  const add = (angle: string, stroke: FigureStroke | undefined, sign: number, about?: Place) => {
    if (stroke) handles.push({ angle, at: to(stroke), about: about ?? from(stroke), sign: (turned ? -sign : sign) as 1 | -1 });
  };
  const sides = view === "side" ? ["far", "near"] : ["left", "right"];
  for (const side of sides) {
    const mirrored = view === "front" && side === "right" ? -1 : 1;
    for (const { part, base, sign } of kLimbs[view]) {
      // A foot turns about the ankle, where its third stroke begins.
      const ankle = part === "foot" ? strokes("foot", side)[2] : undefined;
      add(`${base}_${side}`, strokes(part, side)[0], sign * mirrored, ankle && from(ankle));
    }
  }
  for (const { part, nth = 0, base, sign } of kMiddle) add(base, strokes(part)[nth], sign);
  return handles;
}

const direction = (of: Place, about: Place): number => (Math.atan2(of.y - about.y, of.x - about.x) * 180) / Math.PI;

// Degrees that the angle turns by, from -180 to 180, so that the handle's point comes to lie towards the pointer. In a
// picture y goes down, so a growing direction is clockwise.
export function turnTowards({ at, about, sign }: Handle, pointer: Place): number {
  if (Math.hypot(pointer.x - about.x, pointer.y - about.y) < 8) return 0; // on the joint itself there is no direction
  const by = direction(pointer, about) - direction(at, about);
  return sign * (((((by + 180) % 360) + 360) % 360) - 180);
}
