// The angles that a pose may name, how far a body goes, and which point of the drawing turns which: core/figure/angles.cpp
// and docs/formats/figure.md.
import type { Angles, View } from "../figure_document.ts";

export interface AngleRow {
  base: string; // without its side
  limb: boolean;
  least: number;
  most: number;
}
const row = (base: string, limb: boolean, least: number, most: number): AngleRow => ({ base, limb, least, most });

export const kAngleRows: Record<View, AngleRow[]> = {
  side: [
    row("trunk", false, -180, 180), row("spine", false, -40, 90), row("neck", false, -60, 70), row("turn", false, -90, 90),
    row("shoulder", true, -80, 190), row("shoulder_out", true, -40, 120), row("elbow", true, -10, 155), row("wrist", true, -90, 95),
    row("hip", true, -40, 140), row("hip_out", true, -40, 120), row("knee", true, -10, 160), row("ankle", true, -65, 45),
  ],
  front: [
    row("trunk", false, -180, 180), row("trunk_flex", false, -40, 120), row("spine", false, -45, 45), row("neck", false, -45, 45), row("turn", false, -90, 90),
    row("shoulder", true, -60, 190), row("shoulder_flex", true, -80, 190), row("elbow", true, -155, 155), row("elbow_flex", true, -10, 155), row("wrist", true, -90, 95),
    row("hip", true, -45, 90), row("hip_flex", true, -40, 140), row("knee", true, -100, 30), row("knee_flex", true, -10, 160), row("ankle_flex", true, -65, 45), row("foot", true, -30, 90),
  ],
};

export const kSidesOf: Record<View, readonly [string, string]> = { side: ["near", "far"], front: ["left", "right"] };

// One slider of the editor: an angle on its side.
export interface JointAngle extends AngleRow {
  name: string; // 'knee_far'
  side?: string;
}

export function jointAngles(view: View): JointAngle[] {
  return kAngleRows[view].flatMap((one): JointAngle[] =>
    one.limb ? kSidesOf[view].map((side) => ({ ...one, name: `${one.base}_${side}`, side })) : [{ ...one, name: one.base }],
  );
}

export const otherSide = (view: View, side: string): string => kSidesOf[view][kSidesOf[view][0] === side ? 1 : 0];

// As it is written: on its side, or for both; undefined where the pose says nothing of it.
export function writtenAngle(angles: Angles | undefined, { base, name }: JointAngle): number | undefined {
  return angles?.[name] ?? angles?.[base];
}
export const angleOf = (angles: Angles | undefined, joint: JointAngle): number => writtenAngle(angles, joint) ?? 0;

export const within = ({ least, most }: AngleRow, degrees: number): number => Math.min(most, Math.max(least, degrees));
