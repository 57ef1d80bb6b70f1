// The season week by week: hours as thin bars by setting, and above them one mark an injury.
import * as Plot from "@observablehq/plot";
import type { Weeks } from "./data.ts";
import { kInk } from "./ink.ts";
import { legend } from "./legend.ts";
import { textWidth } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { numberText, ticksOf } from "./numbers.ts";
import { foot, headline, panel, side, type Sides, stacked } from "./panel.ts";
import { patternFill } from "./patterns.ts";
import { weekDomain, weekTicks } from "./week_axis.ts";

const kMostMarks = 6; // above that a week's number is printed instead
const kMarkStep = 13;
const kHoursHeight = 230;
const kMarginTop = 34;

interface Mark {
  at: number;
  row: number;
}

function eventsPanel(data: Weeks, sides: Sides): SVGElement {
  const marks: Mark[] = data.weeks.flatMap((week, at) =>
    week.events > kMostMarks ? [] : Array.from({ length: week.events }, (_, row) => ({ at, row })));
  const many = data.weeks.flatMap((week, at) => (week.events > kMostMarks ? [{ at, text: numberText(week.events) }] : []));
  const rows = Math.max(1, ...data.weeks.map((week) => Math.min(week.events, kMostMarks)));
  const frame = sides.width - sides.marginLeft - sides.marginRight;
  const radius = Math.max(1.6, Math.min(4, (frame / data.weeks.length) * 0.38));
  return panel({
    ...sides,
    height: kMarginTop + rows * kMarkStep + 4,
    marginTop: kMarginTop,
    marginBottom: 4,
    x: { domain: weekDomain(data.weeks.length), axis: null },
    y: { domain: [-0.5, rows - 0.5], axis: null },
    marks: [
      headline(data.events_title, sides),
      Plot.dot(marks, { x: "at", y: "row", r: radius, fill: kInk, ariaLabel: "event" }),
      Plot.text(many, { x: "at", y: 0, text: "text", fontWeight: "bold", ariaLabel: "many events" }),
      Plot.ruleY([-0.5], { stroke: kInk, strokeWidth: 0.8 }),
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
        fill: (bar: Bar) => patternFill(data.id, bar.setting), stroke: kInk, strokeWidth: 0.8, ariaLabel: "hours",
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
  const sides: Sides = { width, marginLeft: 14 + Math.max(...ticks.map((tick) => textWidth(numberText(tick)))), marginRight: 10 };
  return stacked(width, [legend(data.id, data.settings, width), eventsPanel(data, sides), hoursPanel(data, bars, sides, most, ticks)]);
}
