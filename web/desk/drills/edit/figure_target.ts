// Which figure of a drill is edited, and whose posture in it: the player's or the partner's.
import type { DrillDocument } from "../drill_document.ts";
import { viewOf, type FigureDocument, type Partner, type Pose, type View } from "../figure_document.ts";

export interface Target {
  rung: string | undefined; // undefined: the drill's own figure
  pose: number;
  partner: boolean;
}

export function figureAt(drill: DrillDocument, { rung }: Pick<Target, "rung">): FigureDocument | undefined {
  return rung === undefined ? drill.figure : drill.rung_figure?.[rung];
}

export const pathOf = ({ rung }: Pick<Target, "rung">): string => (rung === undefined ? "figure" : `rung_figure.${rung}`);

export function withFigure(drill: DrillDocument, { rung }: Pick<Target, "rung">, figure: FigureDocument | undefined): DrillDocument {
  if (rung === undefined) return figure ? { ...drill, figure } : drill;
  const { rung_figure, ...rest } = drill;
  const { [rung]: _, ...others } = rung_figure ?? {};
  // A figure that is there keeps its place among the others.
  const figures = figure ? { ...rung_figure, [rung]: figure } : others;
  return Object.keys(figures).length > 0 ? { ...rest, rung_figure: figures } : rest;
}

// A partner's posture as a figure of its own with one pose, so that it is drawn and turned as the player's is.
export function partnerFigure(figure: FigureDocument, index: number): FigureDocument | undefined {
  const pose = figure.pose[index];
  if (!pose?.partner) return undefined;
  const view: View = viewOf(figure, pose);
  const { facing, angles, contacts, settle, lift } = pose.partner;
  // Like the main figure it faces the other way if nothing is written; held hands are shown as they are written.
  const usual = view === "side" ? "left" : "away";
  return { view, facing: facing ?? usual, cycle: "hold", pose: [withoutAbsent({ label: "partner", angles, contacts, settle, lift }) as Pose] };
}

function withoutAbsent(table: object): object {
  return Object.fromEntries(Object.entries(table).filter(([, value]) => value !== undefined));
}

export function withPartnerAngles(figure: FigureDocument, index: number, turned: FigureDocument): FigureDocument {
  const angles = turned.pose[0]?.angles;
  return { ...figure, pose: figure.pose.map((pose, at) => (at === index && pose.partner ? { ...pose, partner: withoutAbsent({ ...pose.partner, angles }) as Partner } : pose)) };
}
