// The chart of no data: words, so that an empty place is not taken for a fault.
import { kLineHeight } from "./ink.ts";
import { svgElement } from "./panel.ts";
import { word } from "./spoken.ts";

export function nothing(width: number): SVGElement {
  const height = 3 * kLineHeight;
  const drawn = svgElement("svg", { class: "chart", width, height, viewBox: `0 0 ${width} ${height}` });
  const words = svgElement("text", { x: 0, y: 2 * kLineHeight, fill: "var(--soft)", "font-size": 13 });
  words.textContent = word("nothing");
  drawn.append(words);
  return drawn;
}
