// How a rate changes along a value: the line with its band, one line for 'no difference', and under it the hours the
// line rests on, so that an end drawn from little is seen to be.
import * as Plot from "@observablehq/plot";
import type { Curve } from "./data.ts";
import { kBandOpacity, kChalk, kDashed, kInk, kPaper, kSoft } from "./ink.ts";
import { widest } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf } from "./numbers.ts";
import { foot, headline, panel, side, type Sides, stacked } from "./panel.ts";
import { word } from "./spoken.ts";

const kCurveHeight = 240;
const kHoursHeight = 110;
const kMarginTop = 42;

interface Axes {
  sides: Sides;
  x: [number, number];
  xTicks: number[];
  y: [number, number];
  yTicks: number[];
}

// Times of a band that is wide at its ends are cut at the frame; the middle must stay readable.
function timesOf(data: Curve): [number, number] {
  const line = data.points.map((point) => point.times);
  const highest = Math.max(1, ...line);
  const lowest = Math.min(1, ...line);
  const top = Math.min(Math.max(highest, ...data.points.map((point) => point.high)), highest * 3) * 1.05;
  if (data.log !== true) return [0, top];
  const lows = data.points.map((point) => point.low).filter((low) => low > 0);
  const least = lowest > 0 ? lowest : 0.1;
  return [Math.max(Math.min(least, ...lows), least / 5) / 1.05, top];
}

function axesOf(data: Curve, width: number): Axes {
  const values = [...data.points.map((point) => point.value), ...data.hours.map((bin) => bin.value)];
  const half = data.hours.length > 0 ? binWidth(data) / 2 : 0;
  const [low, high] = [Math.min(...values) - half, Math.max(...values) + half];
  const x: [number, number] = high > low ? [low, high] : [low - 0.5, high + 0.5];
  const y = timesOf(data);
  const yTicks = ticksOf(y[0], y[1], 6, data.log === true);
  const hourTicks = data.hours.map((bin) => numberText(bin.hours));
  const marginLeft = 14 + widest([...yTicks.map(numberText), ...hourTicks]);
  const sides = { width, marginLeft, marginRight: 14 };
  const xTicks = ticksOf(x[0], x[1], Math.max(2, Math.floor((width - marginLeft) / 80)), false);
  return { sides, x, xTicks, y, yTicks };
}

function binWidth(data: Curve): number {
  const values = data.hours.map((bin) => bin.value).sort((one, other) => one - other);
  const gaps = values.slice(1).map((value, at) => value - values[at]!).filter((gap) => gap > 0);
  return gaps.length > 0 ? Math.min(...gaps) : 1;
}

// One point has no line: its interval stands alone.
function line(data: Curve): Plot.Markish[] {
  const stroke = { stroke: kInk, strokeWidth: 2.2, clip: true };
  if (data.points.length === 1) {
    return [
      Plot.ruleX(data.points, { x: "value", y1: "low", y2: "high", ...stroke, stroke: kChalk, strokeWidth: 8, className: "band" }),
      Plot.dot(data.points, { x: "value", y: "times", symbol: "square", r: 5, fill: kInk, className: "curve" }),
    ];
  }
  const edge = { x: "value", stroke: kInk, strokeWidth: 0.8, clip: true };
  return [
    Plot.areaY(data.points, { x: "value", y1: "low", y2: "high", fill: kChalk, fillOpacity: kBandOpacity, clip: true, className: "band" }),
    Plot.line(data.points, { ...edge, y: "low" }),
    Plot.line(data.points, { ...edge, y: "high" }),
    Plot.line(data.points, { x: "value", y: "times", ...stroke, className: "curve" }),
  ];
}

function curvePanel(data: Curve, axes: Axes, withTitle: boolean): SVGElement {
  const axis = foot(axes.xTicks, numberText, withTitle ? data.x_title : "", axes.sides);
  return panel({
    ...axes.sides,
    height: kCurveHeight,
    marginTop: kMarginTop,
    marginBottom: axis.marginBottom,
    x: { domain: axes.x },
    y: { type: data.log === true ? "log" : "linear", domain: axes.y },
    marks: [
      headline(data.y_title, axes.sides),
      axis.marks,
      side(axes.yTicks, numberText),
      line(data),
      Plot.ruleY([1], { stroke: kInk, strokeDasharray: kDashed, className: "reference" }),
      Plot.text([data.reference_label], { frameAnchor: "right", textAnchor: "end", y: [1], dy: 10, fill: kSoft, stroke: kPaper, strokeWidth: 4 }),
    ],
  });
}

function hoursPanel(data: Curve, axes: Axes): SVGElement {
  const most = Math.max(...data.hours.map((bin) => bin.hours), 0) || 1;
  const half = binWidth(data) * 0.42;
  const axis = foot(axes.xTicks, numberText, data.x_title, axes.sides, false);
  return panel({
    ...axes.sides,
    height: kHoursHeight + axis.marginBottom - 26,
    marginTop: kMarginTop,
    marginBottom: axis.marginBottom,
    x: { domain: axes.x },
    y: { domain: [0, most] },
    marks: [
      headline(word("hours_behind"), axes.sides),
      axis.marks,
      side(ticksOf(0, most, 2, false), numberText),
      Plot.rectY(data.hours, {
        x1: (bin: { value: number }) => bin.value - half, x2: (bin: { value: number }) => bin.value + half, y1: 0, y2: "hours",
        fill: kChalk, fillOpacity: kBandOpacity, stroke: kInk, strokeWidth: 0.8, className: "hours",
      }),
      Plot.ruleY([0], { stroke: kInk }),
    ],
  });
}

export function curve(data: Curve, width: number): SVGElement {
  if (data.points.length === 0) return nothing(width);
  const axes = axesOf(data, width);
  if (data.hours.length === 0) return curvePanel(data, axes, true);
  return stacked(width, [curvePanel(data, axes, false), hoursPanel(data, axes)]);
}
