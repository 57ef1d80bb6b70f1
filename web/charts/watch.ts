// Watching week by week: what has gathered above expectation as a stepped line towards the decision limit, and under it
// the events of each week beside what was expected.
import * as Plot from "@observablehq/plot";
import type { Watch, WatchedWeek } from "./data.ts";
import { kAccent, kDashed, kInk, kPaper, kSoft } from "./ink.ts";
import { widest } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf, wholeTicks } from "./numbers.ts";
import { foot, headline, panel, side, type Sides, stacked } from "./panel.ts";
import { word } from "./spoken.ts";
import { weekDomain, weekTicks } from "./week_axis.ts";

interface Week extends WatchedWeek {
  at: number;
  first: boolean; // of a run of alarms: the one that has the word
}

const kSumHeight = 170;
const kEventsHeight = 150;
const kHalfBar = 0.3; // of a week
const kMarginTop = 42;

function sumPanel(data: Watch, weeks: Week[], sides: Sides, top: number, ticks: number[]): SVGElement {
  const last = weeks.length - 1;
  const alarms = weeks.filter((week) => week.alarm);
  return panel({
    ...sides,
    height: kSumHeight,
    marginTop: kMarginTop,
    marginBottom: 12,
    x: { domain: weekDomain(weeks.length), axis: null },
    y: { domain: [0, top] },
    marks: [
      headline(data.sum_title, sides),
      side(ticks, numberText),
      Plot.ruleY([0], { stroke: kInk }),
      Plot.ruleY([data.decision], { stroke: kInk, strokeDasharray: kDashed, className: "decision-limit" }),
      Plot.text([word("limit")], { frameAnchor: "left", textAnchor: "start", y: [data.decision], dy: -9, dx: 2, fill: kSoft, stroke: kPaper, strokeWidth: 4 }),
      Plot.line(
        [{ x: -0.5, y: weeks[0]!.sum }, ...weeks.map((week) => ({ x: week.at, y: week.sum })), { x: last + 0.5, y: weeks[last]!.sum }],
        { x: "x", y: "y", curve: "step", stroke: kInk, strokeWidth: 2, className: "sum" },
      ),
      Plot.dot(alarms, { x: "at", y: "sum", r: 5.5, symbol: "diamond", fill: kAccent, className: "alarm" }),
      Plot.text(alarms.filter((week) => week.first), {
        x: "at", y: "sum", text: () => word("alarm"), dy: -15, fontWeight: "bold", fill: kAccent, stroke: kPaper, strokeWidth: 4,
        textAnchor: "end", dx: 6,
      }),
    ],
  });
}

// A stroke across each week at what was expected; within a bar that is higher it is drawn in the paper's colour.
function expectedStrokes(weeks: Week[], half: number, stroke: string, className: string): Plot.Markish {
  return Plot.link(weeks, {
    x1: (week: Week) => week.at - half, x2: (week: Week) => week.at + half, y1: "expected", y2: "expected",
    stroke, strokeWidth: 1.5, strokeLinecap: "butt", className,
  });
}

function eventsPanel(data: Watch, weeks: Week[], sides: Sides, top: number, ticks: number[]): SVGElement {
  const labels = weeks.map((week) => week.label);
  const axis = foot(weekTicks(labels, sides.width - sides.marginLeft - sides.marginRight), (at) => labels[at] ?? "", "", sides, false);
  return panel({
    ...sides,
    height: kEventsHeight,
    marginTop: kMarginTop,
    marginBottom: axis.marginBottom,
    x: { domain: weekDomain(weeks.length) },
    y: { domain: [0, top] },
    marks: [
      headline(data.events_title, sides),
      side(ticks, numberText),
      axis.marks,
      Plot.rectY(weeks, { x1: (week: Week) => week.at - kHalfBar, x2: (week: Week) => week.at + kHalfBar, y1: 0, y2: "events", fill: kInk, className: "events" }),
      expectedStrokes(weeks, 0.5, kInk, "expected"),
      expectedStrokes(weeks.filter((week) => week.events > week.expected), kHalfBar, kPaper, "expected-in-bar"),
      Plot.ruleY([0], { stroke: kInk }),
    ],
  });
}

export function watch(data: Watch, width: number): SVGElement {
  if (data.weeks.length === 0) return nothing(width);
  const weeks = data.weeks.map((week, at) => ({ ...week, at, first: week.alarm && data.weeks[at - 1]?.alarm !== true }));
  const sumTop = Math.max(data.decision, ...weeks.map((week) => week.sum)) * 1.25 || 1;
  const eventsTop = Math.max(1, ...weeks.map((week) => Math.max(week.events, week.expected)));
  const sumTicks = ticksOf(0, sumTop, 4, false);
  const eventTicks = wholeTicks(eventsTop, 4);
  // The first label stands under the first week, and half of it to the left of that.
  const marginLeft = Math.max(14 + widest([...sumTicks, ...eventTicks].map(numberText)), widest(weeks.slice(0, 1).map((week) => week.label)) / 2);
  const sides: Sides = { width, marginLeft, marginRight: 10 };
  return stacked(width, [sumPanel(data, weeks, sides, sumTop, sumTicks), eventsPanel(data, weeks, sides, eventsTop, eventTicks)]);
}
