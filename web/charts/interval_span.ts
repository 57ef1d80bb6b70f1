// From where to where the axis of intervals goes. One row of few hours must not squeeze all others into a corner, so
// the axis ends at three times the largest estimate (ten times on a logarithmic one) and longer intervals go on as arrows.
import type { Intervals } from "./data.ts";

export interface Span {
  low: number;
  high: number;
}

const kMostTimes = 3;
const kMostTimesLog = 10;

export function spanOf(data: Intervals): Span {
  const marked = data.rows.map((row) => row.estimate);
  if (data.reference !== undefined) marked.push(data.reference.value);
  const ends = data.rows.flatMap((row) => (row.high === undefined ? [row.low] : [row.low, row.high]));
  return data.log === true ? logSpan(marked, ends) : linearSpan(marked, ends);
}

function linearSpan(marked: number[], ends: number[]): Span {
  const low = Math.min(0, ...marked, ...ends);
  const largest = Math.max(...marked);
  const high = Math.max(...marked, ...ends);
  const roof = largest > 0 ? Math.min(high, kMostTimes * largest) : high;
  return { low, high: roof > low ? roof : low + 1 };
}

function logSpan(marked: number[], ends: number[]): Span {
  const above = (values: number[]) => values.filter((value) => value > 0);
  const centre = above(marked).length > 0 ? above(marked) : [1];
  const least = Math.min(...centre);
  const most = Math.max(...centre);
  const low = Math.max(Math.min(least, ...above(ends)), least / kMostTimesLog);
  const high = Math.min(Math.max(most, ...above(ends)), most * kMostTimesLog);
  return { low: low / 1.1, high: high * 1.1 };
}
