// Watching week by week: what has gathered above expectation as a stepped line towards the decision limit, and under it
// the events of each week beside what was expected.
import * as Plot from "@observablehq/plot";
import type { Watch, WatchedWeek } from "./data.ts";
import { kAccent, kDashed, kInk, kPaper, kSoft } from "./ink.ts";
import { textWidth } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf, wholeTicks } from "./numbers.ts";
import { foot, headline, panel, side, type Sides, stacked } from "./panel.ts";
import { weekDomain, weekTicks } from "./week_axis.ts";

interface Week extends WatchedWeek {
  at: number;
  first: boolean; // of a run of alarms: the one that has the word
}

const kSumHeight = 210;
const kEventsHeight = 190;
const kMarginTop = 34;

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
      Plot.ruleY([data.decision], { stroke: kInk, strokeDasharray: kDashed, ariaLabel: "decision limit" }),
      Plot.text(["decision limit"], { frameAnchor: "left", textAnchor: "start", y: [data.decision], dy: -9, dx: 2, fill: kSoft, stroke: kPaper, strokeWidth: 4 }),
      Plot.line(
        [{ x: -0.5, y: weeks[0]!.sum }, ...weeks.map((week) => ({ x: week.at, y: week.sum })), { x: last + 0.5, y: weeks[last]!.sum }],
        { x: "x", y: "y", curve: "step", stroke: kInk, strokeWidth: 2, ariaLabel: "sum" },
      ),
      Plot.dot(alarms, { x: "at", y: "sum", r: 5.5, symbol: "diamond", fill: kAccent, ariaLabel: "alarm" }),
      Plot.text(alarms.filter((week) => week.first), {
        x: "at", y: "sum", text: () => "alarm", dy: -15, fontWeight: "bold", fill: kAccent, stroke: kPaper, strokeWidth: 4,
        textAnchor: alarms.some((week) => week.at > weeks.length * 0.9) ? "end" : "middle",
      }),
    ],
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
      Plot.rectY(weeks, { x1: (week: Week) => week.at - 0.3, x2: (week: Week) => week.at + 0.3, y1: 0, y2: "events", fill: kInk, ariaLabel: "events" }),
      Plot.link(weeks, {
        x1: (week: Week) => week.at - 0.5, x2: (week: Week) => week.at + 0.5, y1: "expected", y2: "expected",
        stroke: kPaper, strokeWidth: 4,
      }),
      Plot.link(weeks, {
        x1: (week: Week) => week.at - 0.5, x2: (week: Week) => week.at + 0.5, y1: "expected", y2: "expected",
        stroke: kInk, strokeWidth: 1.5, ariaLabel: "expected",
      }),
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
  const marginLeft = 14 + Math.max(...[...sumTicks, ...eventTicks].map((tick) => textWidth(numberText(tick))));
  const sides: Sides = { width, marginLeft, marginRight: 10 };
  return stacked(width, [sumPanel(data, weeks, sides, sumTop, sumTicks), eventsPanel(data, weeks, sides, eventsTop, eventTicks)]);
}
