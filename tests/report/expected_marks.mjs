// How many marks of which class a chart of that data must have.
const sum = (numbers) => numbers.reduce((one, other) => one + other, 0);

// Outside the inner lines, by straight interpolation between the two nearest; written apart from the charts' own.
function outside(point, lines) {
  if (lines.length === 0) return false;
  const right = lines.find((line) => line.expected >= point.expected) ?? lines.at(-1);
  const left = lines.filter((line) => line.expected <= point.expected).at(-1) ?? lines[0];
  const share = right === left ? 0 : (point.expected - left.expected) / (right.expected - left.expected);
  const at = (key) => left[key] * (1 - share) + right[key] * share;
  return point.ratio > at("inner_high") || point.ratio < at("inner_low");
}

export const kExpectedMarks = {
  intervals: ({ rows }) => rows.length === 0 ? null
    : { "interval rect": rows.length, "label text": rows.length, "note text": rows.filter(({ note }) => note).length },
  funnel: ({ points, lines }) => {
    if (points.length === 0) return null;
    const out = points.filter((point) => outside(point, lines)).length;
    return { "squad-outside circle": out, "name text": out, "squad-within circle": points.length - out,
      "inner-limit path": lines.length > 0 ? 2 : 0, "outer-limit path": lines.length > 0 ? 2 : 0 };
  },
  watch: ({ weeks }) => weeks.length === 0 ? null
    : { "events rect": weeks.length, "expected path": weeks.length, "sum path": 1, "decision-limit line": 1,
      "alarm path": weeks.filter(({ alarm }) => alarm).length },
  curve: ({ points, hours }) => points.length === 0 ? null
    : { [points.length > 1 ? "band path" : "band line"]: 1, "curve path": 1, "reference line": 1, "hours rect": hours.length },
  // Drawn at 1280 px: many rows stand close, without their counts.
  shares: ({ rows }) => {
    if (rows.length === 0) return null;
    const counts = rows.map(({ parts }) => parts.filter(({ count }) => count > 0).length);
    return { "part rect": sum(counts), "count text": rows.length > 16 ? 0 : sum(counts), "label text": rows.length,
      "bare text": counts.filter((count) => count === 0).length };
  },
  weeks: ({ weeks }) => {
    if (weeks.length === 0) return null;
    const events = weeks.map((week) => week.events);
    const hours = sum(weeks.map((week) => week.hours.filter((value) => value > 0).length));
    return Math.max(...events) > 6 ? { "event-bar line": weeks.length, "hours rect": hours } : { "event circle": sum(events), "hours rect": hours };
  },
};
