// A figure as a drill's file has it: docs/formats/figure.md.
export type View = "side" | "front";
export type Angles = { [angle: string]: number };

export interface Prop {
  kind: string;
  at?: string;
  from?: string;
  to?: string;
  forward?: number;
  height?: number;
}
export interface Partner {
  facing?: string;
  forward?: number;
  contacts?: string[];
  settle?: string[];
  angles?: Angles;
  hold?: { [hand: string]: string };
  lift?: number;
  size?: number;
}
export interface Pose {
  label?: string;
  view?: View;
  at?: number;
  contacts?: string[];
  settle?: string[];
  shift?: number;
  lift?: number;
  angles?: Angles;
  hold?: { [hand: string]: string };
  tolerance_degrees?: number;
  tolerances?: Angles;
  eyes_closed?: boolean;
  props?: Prop[];
  partner?: Partner;
}
export interface Arrow {
  from: string;
  direction?: string;
  to?: string;
  length?: number;
  bend?: number;
  gap?: number;
}
export interface FigureDocument {
  view: View;
  facing?: string;
  main?: string;
  ghost?: string;
  cycle?: "loop" | "once" | "hold";
  swap_sides?: boolean;
  arrow?: Arrow;
  props?: Prop[];
  pose: Pose[];
}

export const kMostPoses = 12;
export const viewOf = (figure: FigureDocument, pose: Pose): View => pose.view ?? figure.view;
export const labelOf = (pose: Pose, index: number): string => pose.label ?? `pose ${index + 1}`;

// The pose of the card: the one named, else the first.
export function mainPoseOf(figure: FigureDocument): number {
  const named = figure.pose.findIndex((pose, index) => labelOf(pose, index) === figure.main);
  return Math.max(0, named);
}
