// Fills told apart without colour: they stay apart in black and white and for every eye.
import { kBandOpacity } from "./ink.ts";
import { svgElement } from "./panel.ts";

const kTile = 6;

export type Pattern = "solid" | "dense" | "sparse" | "bare" | "dots" | "chalk";

// From all through less and less to bare paper; a fifth, dotted, for what is not known.
export function byDegree(parts: number): Pattern[] {
  if (parts <= 2) return ["solid", "bare"];
  if (parts === 3) return ["solid", "sparse", "bare"];
  return ["solid", "dense", "sparse", "bare", "dots"];
}

// Of one rank: light first, since the first is mostly the largest.
export const kByRank: Pattern[] = ["chalk", "solid", "sparse", "dots", "dense"];

const kDrawings: Record<Pattern, [string, Record<string, string | number>][]> = {
  solid: [["rect", { width: kTile, height: kTile, fill: "var(--ink)" }]],
  dense: [["path", { d: "M-1,1L1,-1M0,6L6,0M5,7L7,5", stroke: "var(--ink)", "stroke-width": 2.4 }]],
  sparse: [["path", { d: "M-1,5L1,7M0,0L6,6M5,-1L7,1", stroke: "var(--ink)", "stroke-width": 0.9 }]],
  bare: [],
  dots: [["circle", { cx: 3, cy: 3, r: 0.9, fill: "var(--ink)" }]],
  chalk: [["rect", { width: kTile, height: kTile, fill: "var(--chalk)", "fill-opacity": kBandOpacity }]],
};

// A reference inside an SVG reaches the whole page, so each chart's definitions have names of their own.
const idOf = (chart: string, pattern: Pattern) => `${pattern}-${[...chart].map((letter) => letter.codePointAt(0)!.toString(36)).join("")}`;

export function patternFill(chart: string, patterns: Pattern[], at: number): string {
  return `url(#${idOf(chart, patterns[at % patterns.length]!)})`;
}

// The definitions that the fills of one chart refer to.
export function patternDefinitions(chart: string): SVGElement {
  const definitions = svgElement("defs", {});
  for (const [name, drawing] of Object.entries(kDrawings) as [Pattern, (typeof kDrawings)[Pattern]][]) {
    const pattern = svgElement("pattern", { id: idOf(chart, name), width: kTile, height: kTile, patternUnits: "userSpaceOnUse" });
    pattern.append(svgElement("rect", { width: kTile, height: kTile, fill: "var(--paper)" }));
    for (const [element, attributes] of drawing) pattern.append(svgElement(element, attributes));
    definitions.append(pattern);
  }
  return definitions;
}
