// Fills told apart without colour: they stay apart in black and white and for every eye.
import type * as Plot from "@observablehq/plot";
import { type Box, dotsIn, stripesIn } from "../shared/look/hatching.ts";
import { kBandOpacity, kChalk, kInk, kPaper } from "./ink.ts";
import { svgElement } from "./panel.ts";

const kStep = 6;

export type Pattern = "solid" | "dense" | "sparse" | "bare" | "dots" | "chalk";

// From all through less and less to bare paper; a fifth, dotted, for what is not known.
export function byDegree(parts: number): Pattern[] {
  if (parts <= 2) return ["solid", "bare"];
  if (parts === 3) return ["solid", "sparse", "bare"];
  return ["solid", "dense", "sparse", "bare", "dots"];
}

// Of one rank: light first, since the first is mostly the largest.
export const kByRank: Pattern[] = ["chalk", "solid", "sparse", "dots", "dense"];

const whole = ({ x, y, width, height }: Box): string => `M${x} ${y}h${width}v${height}h${-width}Z`;

function shapeOf(pattern: Pattern, box: Box): Record<string, string | number> | undefined {
  switch (pattern) {
    case "solid":
      return { d: whole(box), fill: kInk };
    case "dense":
      return { d: stripesIn(box, { slant: "rising", step: kStep, wide: 3.4 }), fill: kInk };
    case "sparse":
      return { d: stripesIn(box, { slant: "falling", step: kStep, wide: 1.3 }), fill: kInk };
    case "bare":
      return undefined;
    case "dots":
      return { d: dotsIn(box, kStep, 0.9), fill: kInk };
    case "chalk":
      return { d: whole(box), fill: kChalk, "fill-opacity": kBandOpacity };
  }
}

// Paper and the pattern on it; an outline is drawn over it.
export function patternIn(box: Box, pattern: Pattern): SVGElement {
  const drawn = svgElement("g", { stroke: "none" });
  drawn.append(svgElement("path", { d: whole(box), fill: kPaper }));
  const shape = shapeOf(pattern, box);
  if (shape) drawn.append(svgElement("path", shape));
  return drawn;
}

// Of a mark of rectangles: each gets its pattern under its outline. patternOf: by the index of the datum.
export function patterned(patternOf: (at: number) => Pattern): Plot.RenderFunction {
  return (index, scales, values, dimensions, context, next) => {
    const group = next?.(index, scales, values, dimensions, context) ?? null;
    [...(group?.querySelectorAll("rect") ?? [])].forEach((rectangle, at) => {
      const size = (name: string): number => Number(rectangle.getAttribute(name));
      const box = { x: size("x"), y: size("y"), width: size("width"), height: size("height") };
      rectangle.before(patternIn(box, patternOf(index[at]!)));
      rectangle.setAttribute("fill", "none");
    });
    return group;
  };
}
