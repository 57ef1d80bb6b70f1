// The drawings are a piece of their own, fetched with the first report: their library is larger than the rest of the desk.
import type { draw } from "../../charts/draw.ts";

export type Draw = typeof draw;

// Undefined where it could not be had: the report is readable without.
export function fetchDraw(): Promise<Draw | undefined> {
  return import("../../charts/draw.ts").then(
    (piece) => piece.draw,
    () => undefined,
  );
}
