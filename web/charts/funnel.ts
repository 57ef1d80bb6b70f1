// Squads by how much was expected of them, between the lines that chance alone would keep to. Only what lies outside a
// line has its name; a point outside is filled, so that it differs by more than its place.
import * as Plot from "@observablehq/plot";
import type { Funnel, FunnelLine, FunnelPoint } from "./data.ts";
import { kChalk, kDashed, kInk, kLineHeight, kPaper, kSoft } from "./ink.ts";
import { shortened, widest } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf } from "./numbers.ts";
import { foot, headline, panel, side, type Sides } from "./panel.ts";
import { type Placed, placed, type Wanted } from "./placed_labels.ts";

const kHeight = 300;
const kRadius = 4.5;

// The lines at one expected number, between two given ones by straight interpolation, at the ends held.
function lineAt(lines: FunnelLine[], expected: number): FunnelLine | undefined {
  const after = lines.findIndex((line) => line.expected >= expected);
  if (after <= 0) return after === 0 ? lines[0] : lines[lines.length - 1];
  const [low, high] = [lines[after - 1]!, lines[after]!];
  const share = (expected - low.expected) / (high.expected - low.expected);
  const between = (key: keyof FunnelLine) => low[key] + share * (high[key] - low[key]);
  return {
    expected,
    inner_low: between("inner_low"),
    inner_high: between("inner_high"),
    outer_low: between("outer_low"),
    outer_high: between("outer_high"),
  };
}

export function isOutside(point: FunnelPoint, lines: FunnelLine[]): boolean {
  const line = lineAt(lines, point.expected);
  return line !== undefined && (point.ratio > line.inner_high || point.ratio < line.inner_low);
}

// The lines spread without end where little is expected; the axis follows the points and shows the lines to twice them.
function topOf(data: Funnel): number {
  const highest = Math.max(2, ...data.points.map((point) => point.ratio));
  return Math.max(highest * 1.12, Math.min(highest * 2, ...data.lines.map((line) => line.outer_high)));
}

function limits(data: Funnel): Plot.Markish[] {
  const inner = { x: "expected", stroke: kInk, strokeWidth: 1, strokeDasharray: kDashed, clip: true };
  const outer = { x: "expected", stroke: kInk, strokeWidth: 1, clip: true };
  return [
    Plot.areaY(data.lines, { x: "expected", y1: "inner_low", y2: "inner_high", fill: kChalk, fillOpacity: 0.3, clip: true }),
    Plot.line(data.lines, { ...inner, y: "inner_low", className: "inner-limit" }),
    Plot.line(data.lines, { ...inner, y: "inner_high", className: "inner-limit" }),
    Plot.line(data.lines, { ...outer, y: "outer_low", className: "outer-limit" }),
    Plot.line(data.lines, { ...outer, y: "outer_high", className: "outer-limit" }),
  ];
}

// The lines' names stand beside their upper ends, at least a line apart.
function names(data: Funnel, right: number, top: number, unitsPerLine: number): Plot.Markish[] {
  const last = data.lines[data.lines.length - 1];
  if (last === undefined) return [];
  const inner = Math.min(last.inner_high, top);
  const outer = Math.max(Math.min(last.outer_high, top), inner + unitsPerLine);
  return [
    { y: outer, text: data.outer_name },
    { y: inner, text: data.inner_name },
  ].map(({ y, text }) => Plot.text([text], { x: [right], y: [y], textAnchor: "start", dx: 8, fill: kSoft, className: "limit-name" }));
}

export function funnel(data: Funnel, width: number): SVGElement {
  if (data.points.length === 0) return nothing(width);
  const top = topOf(data);
  const right = Math.max(1, ...data.points.map((point) => point.expected * 1.05), ...data.lines.map((line) => line.expected));
  const yTicks = ticksOf(0, top, 6, false);
  const sides: Sides = {
    width,
    marginLeft: 14 + widest(yTicks.map(numberText)),
    marginRight: data.lines.length > 0 ? 12 + widest([data.inner_name, data.outer_name]) : 12,
  };
  const frame = width - sides.marginLeft - sides.marginRight;
  const axis = foot(ticksOf(0, right, Math.max(2, Math.floor(frame / 90)), false), numberText, data.x_title, sides, false);
  const marginTop = 42;
  const pixelX = (value: number) => sides.marginLeft + (value / right) * frame;
  const pixelY = (value: number) => kHeight - axis.marginBottom - (value / top) * (kHeight - marginTop - axis.marginBottom);
  const outside = data.points.filter((point) => isOutside(point, data.lines));
  const wanted: Wanted[] = outside.map((point) => ({ text: shortened(point.label, frame * 0.45), x: pixelX(point.expected), y: pixelY(point.ratio) }));
  const labels = placed(wanted, { left: sides.marginLeft, right: width, top: marginTop, bottom: kHeight - axis.marginBottom - 10 }, kRadius + 4);
  const dots = { x: "expected", y: "ratio", r: kRadius, stroke: kInk, strokeWidth: 1.2 };
  return panel({
    width,
    height: kHeight,
    marginTop,
    marginBottom: axis.marginBottom,
    marginLeft: sides.marginLeft,
    marginRight: sides.marginRight,
    x: { domain: [0, right] },
    y: { domain: [0, top] },
    marks: [
      axis.marks,
      side(yTicks, numberText, false),
      headline(data.y_title, sides),
      limits(data),
      Plot.ruleY([1], { stroke: kInk, strokeWidth: 1 }),
      Plot.ruleY([0], { stroke: kChalk }),
      names(data, right, top, kLineHeight / (pixelY(0) - pixelY(1))),
      Plot.dot(data.points.filter((point) => !outside.includes(point)), { ...dots, fill: kPaper, className: "squad-within" }),
      Plot.dot(outside, { ...dots, fill: kInk, className: "squad-outside" }),
      Plot.text(labels, {
        x: (label: Placed) => ((label.x - sides.marginLeft) / frame) * right,
        y: (label: Placed) => ((label.y - pixelY(0)) / (pixelY(1) - pixelY(0))),
        text: "text", textAnchor: "start", stroke: kPaper, strokeWidth: 4, fill: kInk, className: "name",
      }),
    ],
  });
}
