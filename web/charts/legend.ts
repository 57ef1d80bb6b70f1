// Which pattern means what: swatches in a row, in as many rows as the width needs.
import { kInk, kTextSize } from "./ink.ts";
import { shortened, textWidth } from "./measure.ts";
import { svgElement } from "./panel.ts";
import { type Pattern, patternIn } from "./patterns.ts";

const kSwatch = { width: 22, height: 13 };
const kRow = 24;
const kGap = 22;

export function legend(patterns: Pattern[], names: string[], width: number): SVGElement {
  const whole = svgElement("svg", { class: "chart", "font-size": kTextSize });
  let x = 0;
  let y = 0;
  names.forEach((name, at) => {
    const text = shortened(name, width - kSwatch.width - 12);
    const needed = kSwatch.width + 8 + textWidth(text);
    if (x > 0 && x + needed > width) {
      x = 0;
      y += kRow;
    }
    const box = { x: x + 0.5, y: y + 3.5, ...kSwatch };
    const edge = svgElement("rect", { ...box, fill: "none", stroke: kInk, "stroke-width": 0.8 });
    const words = svgElement("text", { x: x + kSwatch.width + 8, y: y + 14.5, fill: kInk });
    words.textContent = text;
    whole.append(patternIn(box, patterns[at % patterns.length]!), edge, words);
    x += needed + kGap;
  });
  whole.setAttribute("width", String(width));
  whole.setAttribute("height", String(y + kRow + 10));
  return whole;
}
