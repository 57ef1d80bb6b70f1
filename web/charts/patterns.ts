// Fills told apart without colour: from solid through hatching to bare paper, and dots for what is not known. They stay
// apart in black and white and for every eye.
import { svgElement } from "./panel.ts";

export const kPatterns = 5;
const kTile = 6;

const kDrawings: [string, Record<string, string | number>][][] = [
  [["rect", { width: kTile, height: kTile, fill: "var(--ink)" }]],
  [["path", { d: "M-1,1L1,-1M0,6L6,0M5,7L7,5", stroke: "var(--ink)", "stroke-width": 2.4 }]],
  [["path", { d: "M-1,5L1,7M0,0L6,6M5,-1L7,1", stroke: "var(--ink)", "stroke-width": 0.9 }]],
  [],
  [["circle", { cx: 3, cy: 3, r: 0.9, fill: "var(--ink)" }]],
];

const idOf = (chart: string, at: number) => `pattern-${chart.replace(/[^A-Za-z0-9]/g, "-")}-${at}`;

export function patternFill(chart: string, at: number): string {
  return `url(#${idOf(chart, at % kPatterns)})`;
}

// The definitions that the fills of one chart refer to.
export function patternDefinitions(chart: string): SVGElement {
  const definitions = svgElement("defs", {});
  kDrawings.forEach((drawing, at) => {
    const pattern = svgElement("pattern", { id: idOf(chart, at), width: kTile, height: kTile, patternUnits: "userSpaceOnUse" });
    pattern.append(svgElement("rect", { width: kTile, height: kTile, fill: "var(--paper)" }));
    for (const [name, attributes] of drawing) pattern.append(svgElement(name, attributes));
    definitions.append(pattern);
  });
  return definitions;
}
