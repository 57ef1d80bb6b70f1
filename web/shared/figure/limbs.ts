// Strokes of one side that follow each other are one limb: outlined as a whole, so that no joint is crossed out.
import type { FigureStroke } from "../engine/answers.ts";

export interface Limb {
  first: number; // position of its first stroke in the frame
  strokes: FigureStroke[];
}

// Strokes of one width in a limb that follow each other are one path: a foot's three are written at once.
export interface Bone {
  first: number; // position of its first stroke in the frame
  count: number;
  width: number;
}

export function bonesOf({ first, strokes }: Limb): Bone[] {
  const bones: Bone[] = [];
  strokes.forEach(({ width }, index) => {
    const last = bones[bones.length - 1];
    if (last?.width === width) last.count += 1;
    else bones.push({ first: first + index, count: 1, width });
  });
  return bones;
}

// In whole thousandths of stature, which is finer than a screen shows.
export function pathOfBone(strokes: FigureStroke[], { first, count }: Pick<Bone, "first" | "count">): string {
  let path = "";
  for (const { x1, y1, x2, y2 } of strokes.slice(first, first + count)) path += `M${Math.round(x1)} ${Math.round(y1)}L${Math.round(x2)} ${Math.round(y2)}`;
  return path;
}

const ofLeg = (part: string): boolean => ["thigh", "shank", "foot"].includes(part);

export function limbsOf(strokes: FigureStroke[]): Limb[] {
  const limbs: Limb[] = [];
  strokes.forEach((stroke, first) => {
    const last = limbs[limbs.length - 1];
    const before = last?.strokes[0];
    if (last && before && before.side === stroke.side && ofLeg(before.part) === ofLeg(stroke.part)) last.strokes.push(stroke);
    else limbs.push({ first, strokes: [stroke] });
  });
  return limbs;
}
