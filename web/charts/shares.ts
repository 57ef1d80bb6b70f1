// Parts of a whole, row by row: bars to 100 % in patterns, the counts printed under their parts.
import * as Plot from "@observablehq/plot";
import type { Part, Shares } from "./data.ts";
import { kInk, kLineHeight, kNarrow, kSoft, kTextSize } from "./ink.ts";
import { legend } from "./legend.ts";
import { shortened, textWidth, widest, wrapped } from "./measure.ts";
import { nothing } from "./nothing.ts";
import { panel, stacked } from "./panel.ts";
import { byDegree, patterned } from "./patterns.ts";
import { spokenNow, word } from "./spoken.ts";
import { spreadOut } from "./spread_out.ts";

interface Segment {
  row: number;
  part: number;
  from: number; // shares of the whole, 0 to 1
  to: number;
  count: number;
}

const kBarHeight = 16;
const kManyRows = 16; // more stand closer, without their counts, which the table has

function segmentsOf(parts: Part[], row: number): Segment[] {
  const whole = parts.reduce((sum, part) => sum + part.count, 0);
  let from = 0;
  return parts.flatMap(({ count }, part) => {
    if (count <= 0) return [];
    const segment = { row, part, from, to: from + count / whole, count };
    from = segment.to;
    return [segment];
  });
}

interface Count {
  row: number;
  middle: number; // pixels from the bar's left end
  text: string;
}

// A count stands under the middle of its part; where parts are narrow the counts move apart, in their order.
function countsOf(segments: Segment[], barWidth: number): Count[] {
  const texts = segments.map((segment) => segment.count.toLocaleString(spokenNow()));
  const wanted = segments.map((segment) => ((segment.from + segment.to) / 2) * barWidth);
  const places = spreadOut(wanted, texts.map((text) => textWidth(text) + 8), barWidth);
  return segments.map((segment, at) => ({ row: segment.row, middle: places[at]!, text: texts[at]! }));
}

export function shares(data: Shares, width: number): SVGElement {
  const names = data.rows[0]?.parts.map((part) => part.name) ?? [];
  if (names.length === 0) return nothing(width);
  const patterns = byDegree(names.length);
  const narrow = width < kNarrow;
  const many = data.rows.length > kManyRows && !narrow;
  const room = narrow ? width - 8 : Math.min(widest(data.rows.map((row) => row.label)), width * 0.32);
  const labels = data.rows.map((row) => (narrow ? shortened(row.label, room) : wrapped(row.label, room, many ? 1 : 2).join("\n")));
  const marginLeft = narrow ? 1 : room + 18;
  const barWidth = width - marginLeft - 1;
  const rowHeight = narrow ? 68 : many ? 21 : 48;
  const barTop = narrow ? 25 : many ? 2 : 6;
  const segments = data.rows.map((row, at) => segmentsOf(row.parts, at));
  const parts = segments.flat();
  const bare = segments.flatMap((found, row) => (found.length === 0 ? [{ row }] : []));
  const middle = barTop + kBarHeight / 2 - rowHeight / 2; // of the bar, from the row's middle
  const bars = panel({
    width,
    height: rowHeight * data.rows.length,
    marginTop: 0,
    marginBottom: 0,
    marginLeft,
    marginRight: 1,
    x: { domain: [0, 1], axis: null },
    y: { type: "band", domain: data.rows.map((_, at) => at), padding: 0, axis: null },
    marks: [
      Plot.barX(parts, {
        y: "row", x1: "from", x2: "to", insetTop: barTop, insetBottom: rowHeight - barTop - kBarHeight,
        render: patterned((at) => patterns[parts[at]!.part % patterns.length]!), stroke: kInk, strokeWidth: 0.8, className: "part",
      }),
      Plot.text(many ? [] : segments.flatMap((found) => countsOf(found, barWidth)), {
        y: "row", x: (count: Count) => count.middle / barWidth, text: "text", dy: middle + kBarHeight / 2 + 11, fill: kInk, className: "count",
      }),
      Plot.text(bare, { y: "row", frameAnchor: "left", text: () => word("bare"), dy: middle, fill: kSoft, className: "bare" }),
      Plot.text(labels.map((text, row) => ({ text, row })), {
        y: "row", text: "text", frameAnchor: "left", textAnchor: "start", dx: -marginLeft, dy: narrow ? 12 - rowHeight / 2 : middle,
        lineHeight: kLineHeight / kTextSize, className: "label",
      }),
    ],
  });
  return stacked(width, [legend(patterns, names, width), bars]);
}
