// Rows of intervals: each as wide as it is uncertain, the estimate a bold stroke in it, the numbers beside it.
import * as Plot from "@observablehq/plot";
import { type Span, spanOf } from "./interval_span.ts";
import { kBandOpacity, kChalk, kDashed, kInk, kLineHeight, kNarrow, kPaper, kSoft, kTextSize } from "./ink.ts";
import type { IntervalRow, Intervals } from "./data.ts";
import { shortened, textWidth, widest, wrapped } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf } from "./numbers.ts";
import { foot, panel, type Sides } from "./panel.ts";
import { word } from "./spoken.ts";

interface Row extends IntervalRow {
  at: number;
  from: number;
  to: number;
  cutBelow: boolean;
  cutAbove: boolean;
}

// Where things stand in a row, from its top: beside the label on a wide page, under it on a phone.
interface Layout extends Sides {
  rowHeight: number;
  barTop: number;
  barHeight: number;
  labels: string[];
  narrow: boolean;
}

const kBarHeight = 8;
const kManyRows = 20; // more stand closer, one line each, so that 40 fit a page

function narrowLayout(data: Intervals, width: number): Layout {
  const labels = data.rows.map(({ label, note }) => shortened(label, width - 24 - (note ? textWidth(note) : 0)));
  return { width, marginLeft: 8, marginRight: 12, rowHeight: 46, barTop: 26, barHeight: kBarHeight, labels, narrow: true };
}

function wideLayout(data: Intervals, width: number): Layout {
  const room = Math.min(widest(data.rows.map((row) => row.label)), width * 0.32);
  const notes = widest(data.rows.map((row) => row.note ?? ""));
  const many = data.rows.length > kManyRows;
  const lines = data.rows.map((row) => wrapped(row.label, room, many ? 1 : 2));
  const one = many ? 20 : 24;
  const rowHeight = lines.some((line) => line.length > 1) ? 2 * kLineHeight + 8 : one;
  return {
    width,
    marginLeft: room + 18,
    marginRight: notes > 0 ? notes + 22 : 14,
    rowHeight,
    barTop: (rowHeight - kBarHeight) / 2,
    barHeight: kBarHeight,
    labels: lines.map((line) => line.join("\n")),
    narrow: false,
  };
}

function rowsWithin(rows: IntervalRow[], span: Span): Row[] {
  return rows.map((row, at) => {
    const high = row.high ?? Infinity;
    return {
      ...row,
      at,
      from: Math.max(row.low, span.low),
      to: Math.min(high, span.high),
      cutBelow: row.low < span.low,
      cutAbove: high > span.high,
    };
  });
}

function words(rows: Row[], layout: Layout): Plot.Markish[] {
  const place = layout.narrow ? { dy: 13 - layout.rowHeight / 2 } : {};
  const common = { y: "at", lineHeight: kLineHeight / kTextSize, stroke: kPaper, strokeWidth: 5, fill: kInk, ...place };
  return [
    Plot.text(rows, { ...common, text: (row: Row) => layout.labels[row.at], frameAnchor: "left", textAnchor: "start", dx: -layout.marginLeft, className: "label" }),
    Plot.text(rows, { ...common, text: "note", frameAnchor: "right", textAnchor: "end", dx: layout.marginRight, className: "note" }),
  ];
}

function bars(rows: Row[], layout: Layout, span: Span): Plot.Markish[] {
  const { barTop, barHeight, rowHeight } = layout;
  const inset = { insetTop: barTop, insetBottom: rowHeight - barTop - barHeight };
  const tall = { insetTop: inset.insetTop - 4, insetBottom: inset.insetBottom - 4 };
  const arrow = { y: "at", r: 6, dy: barTop + barHeight / 2 - rowHeight / 2, symbol: "triangle", fill: kInk } as const;
  const shown = (row: Row) => row.estimate >= span.low && row.estimate <= span.high;
  return [
    Plot.barX(rows, { y: "at", x1: "from", x2: "to", ...inset, fill: kChalk, fillOpacity: kBandOpacity, stroke: kInk, strokeWidth: 0.8, className: "interval" }),
    Plot.dot(rows.filter((row) => row.cutAbove), { ...arrow, x: span.high, rotate: 90, className: "goes-on-above" }),
    Plot.dot(rows.filter((row) => row.cutBelow), { ...arrow, x: span.low, rotate: -90, className: "goes-on-below" }),
    Plot.tickX(rows.filter(shown), { y: "at", x: "estimate", ...tall, stroke: kInk, strokeWidth: 3, className: "estimate" }),
  ];
}

function reference(data: Intervals, layout: Layout): Plot.Markish[] {
  if (data.reference === undefined) return [];
  const { value, label } = data.reference;
  return [
    Plot.ruleX([value], { stroke: kInk, strokeDasharray: kDashed, className: "reference" }),
    Plot.text([shortened(label, layout.width / 2)], { x: [value], frameAnchor: "top", lineAnchor: "bottom", dy: -6, fill: kSoft }),
  ];
}

export function intervals(data: Intervals, width: number): SVGElement {
  if (data.rows.length === 0) return nothing(width);
  const layout = width < kNarrow ? narrowLayout(data, width) : wideLayout(data, width);
  const span = spanOf(data);
  const rows = rowsWithin(data.rows, span);
  const cut = rows.some((row) => row.cutAbove || row.cutBelow);
  const title = cut ? `${data.x_title} (${word("beyond")})` : data.x_title;
  const frame = layout.width - layout.marginLeft - layout.marginRight;
  const ticks = ticksOf(span.low, span.high, Math.max(2, Math.floor(frame / 80)), data.log === true);
  const axis = foot(ticks, numberText, title, layout);
  const marginTop = data.reference === undefined ? 8 : 30;
  return panel({
    width,
    height: marginTop + layout.rowHeight * rows.length + axis.marginBottom,
    marginTop,
    marginBottom: axis.marginBottom,
    marginLeft: layout.marginLeft,
    marginRight: layout.marginRight,
    x: { type: data.log === true ? "log" : "linear", domain: [span.low, span.high] },
    y: { type: "band", domain: rows.map((row) => row.at), padding: 0, axis: null },
    marks: [axis.marks, reference(data, layout), bars(rows, layout, span), words(rows, layout)],
  });
}
