// The season week by week: hours as thin bars by setting, and above them one mark an injury.
import * as Plot from "@observablehq/plot";
import type { Weeks } from "./data.ts";
import { kInk } from "./ink.ts";
import { legend } from "./legend.ts";
import { widest } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf, wholeTicks } from "./numbers.ts";
import { foot, headline, panel, side, type Sides, stacked } from "./panel.ts";
import { kByRank, patterned } from "./patterns.ts";
import { weekDomain, weekTicks } from "./week_axis.ts";

const kMostMarks = 6; // in one week; where a week has more, strokes to a scale take the marks' place
const kMarkStep = 13;
const kHoursHeight = 180;
const kEventsHeight = 100;
const kMarginTop = 42;

interface Mark {
  at: number;
  row: number;
}

function eventMarks(data: Weeks, sides: Sides): SVGElement {
  const marks: Mark[] = data.weeks.flatMap((week, at) => Array.from({ length: week.events }, (_, row) => ({ at, row })));
  const rows = Math.max(1, ...data.weeks.map((week) => week.events));
  const domain = weekDomain(data.weeks.length);
  const perWeek = (sides.width - sides.marginLeft - sides.marginRight) / (domain[1] - domain[0]);
  return panel({
    ...sides,
    height: kMarginTop + rows * kMarkStep + 4,
    marginTop: kMarginTop,
    marginBottom: 4,
    x: { domain, axis: null },
    y: { domain: [-0.5, rows - 0.5], axis: null },
    marks: [
      headline(data.events_title, sides),
      Plot.dot(marks, { x: "at", y: "row", r: Math.max(1.6, Math.min(4, perWeek * 0.38)), fill: kInk, className: "event" }),
      Plot.ruleY([-0.5], { stroke: kInk, strokeWidth: 0.8 }),
    ],
  });
}

function eventBars(data: Weeks, sides: Sides, most: number): SVGElement {
  const counted = data.weeks.map((week, at) => ({ at, events: week.events }));
  return panel({
    ...sides,
    height: kEventsHeight,
    marginTop: kMarginTop,
    marginBottom: 4,
    x: { domain: weekDomain(data.weeks.length), axis: null },
    y: { domain: [0, most] },
    marks: [
      headline(data.events_title, sides),
      side(wholeTicks(most, 3), numberText),
      Plot.ruleX(counted, { x: "at", y1: 0, y2: "events", stroke: kInk, strokeWidth: 3, className: "event-bar" }),
      Plot.ruleY([0], { stroke: kInk, strokeWidth: 0.8 }),
    ],
  });
}

interface Bar {
  at: number;
  setting: number;
  from: number;
  to: number;
}

function barsOf(data: Weeks): Bar[] {
  return data.weeks.flatMap((week, at) => {
    let from = 0;
    return week.hours.flatMap((hours, setting) => {
      if (hours <= 0) return [];
      const bar = { at, setting, from, to: from + hours };
      from = bar.to;
      return [bar];
    });
  });
}

function hoursPanel(data: Weeks, bars: Bar[], sides: Sides, most: number, ticks: number[]): SVGElement {
  const labels = data.weeks.map((week) => week.label);
  const axis = foot(weekTicks(labels, sides.width - sides.marginLeft - sides.marginRight), (at) => labels[at] ?? "", "", sides, false);
  return panel({
    ...sides,
    height: kHoursHeight,
    marginTop: kMarginTop,
    marginBottom: axis.marginBottom,
    x: { domain: weekDomain(data.weeks.length) },
    y: { domain: [0, most] },
    marks: [
      headline(data.hours_title, sides),
      side(ticks, numberText),
      axis.marks,
      Plot.rectY(bars, {
        x1: (bar: Bar) => bar.at - 0.32, x2: (bar: Bar) => bar.at + 0.32, y1: "from", y2: "to",
        render: patterned((at) => kByRank[bars[at]!.setting % kByRank.length]!), stroke: kInk, strokeWidth: 0.8, className: "hours",
      }),
      Plot.ruleY([0], { stroke: kInk }),
    ],
  });
}

export function weeks(data: Weeks, width: number): SVGElement {
  if (data.weeks.length === 0) return nothing(width);
  const bars = barsOf(data);
  const most = Math.max(0, ...bars.map((bar) => bar.to)) || 1;
  const ticks = ticksOf(0, most, 4, false);
  const sides: Sides = { width, marginLeft: Math.max(14 + widest(ticks.map(numberText)), widest(data.weeks.slice(0, 1).map((week) => week.label)) / 2), marginRight: 10 };
  const mostEvents = Math.max(...data.weeks.map((week) => week.events));
  const events = mostEvents > kMostMarks ? eventBars(data, sides, mostEvents) : eventMarks(data, sides);
  return stacked(width, [legend(kByRank, data.settings, width), events, hoursPanel(data, bars, sides, most, ticks)]);
}
