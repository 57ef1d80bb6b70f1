// Strokes of one side that follow each other are one limb: outlined as a whole, so that no joint is crossed out.
import type { FigureStroke } from "../engine/answers.ts";

export interface Limb {
  first: number; // position of its first stroke in the frame
  strokes: FigureStroke[];
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
