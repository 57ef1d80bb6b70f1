// What a page hands to its charts: the same shapes as app/report/chart_data.h writes. A field that may be absent is
// absent, never null.

export interface Reference {
  value: number;
  label: string;
}

export interface IntervalRow {
  label: string;
  estimate: number;
  low: number;
  high?: number; // absent: no upper limit
  note?: string; // the numbers in words, printed beside the row
}

export interface Intervals {
  kind: "intervals";
  id: string;
  x_title: string;
  rows: IntervalRow[];
  reference?: Reference;
  log?: boolean;
}

export interface FunnelPoint {
  label: string;
  expected: number;
  ratio: number;
}

export interface FunnelLine {
  expected: number;
  inner_low: number;
  inner_high: number;
  outer_low: number;
  outer_high: number;
}

export interface Funnel {
  kind: "funnel";
  id: string;
  x_title: string;
  y_title: string;
  inner_name: string; // '95 in 100'
  outer_name: string;
  points: FunnelPoint[];
  lines: FunnelLine[]; // by rising expected
}

export interface WatchedWeek {
  label: string;
  events: number;
  expected: number;
  sum: number;
  alarm: boolean;
}

export interface Watch {
  kind: "watch";
  id: string;
  events_title: string;
  sum_title: string;
  weeks: WatchedWeek[];
  decision: number;
}

export interface CurvePoint {
  value: number;
  times: number;
  low: number;
  high: number;
}

export interface CurveHours {
  value: number;
  hours: number;
}

export interface Curve {
  kind: "curve";
  id: string;
  x_title: string;
  y_title: string;
  reference_label: string; // at 1
  points: CurvePoint[]; // by rising value
  hours: CurveHours[]; // may be empty
  log?: boolean;
}

export interface Part {
  name: string;
  count: number;
}

export interface Shares {
  kind: "shares";
  id: string;
  rows: { label: string; parts: Part[] }[]; // the same names in the same order in every row
}

export interface HoursWeek {
  label: string;
  hours: number[]; // by setting
  events: number;
}

export interface Weeks {
  kind: "weeks";
  id: string;
  hours_title: string;
  events_title: string;
  settings: string[];
  weeks: HoursWeek[];
}

export type ChartData = Intervals | Funnel | Watch | Curve | Shares | Weeks;
