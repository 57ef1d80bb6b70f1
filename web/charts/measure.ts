// How wide a text is in the page's own type, and texts broken or shortened to a width.
import { kTextSize } from "./ink.ts";

let pen: CanvasRenderingContext2D | null = null;

export function textWidth(text: string, bold = false): number {
  pen ??= document.createElement("canvas").getContext("2d");
  if (pen === null) return text.length * kTextSize * 0.6;
  pen.font = `${bold ? "bold " : ""}${kTextSize}px ${getComputedStyle(document.body).fontFamily}`;
  return pen.measureText(text).width;
}

export function widest(texts: Iterable<string>): number {
  let most = 0;
  for (const text of texts) most = Math.max(most, textWidth(text));
  return Math.ceil(most);
}

// The longest beginning that fits, with an ellipsis where something is cut. Cut between code points, not inside one.
export function shortened(text: string, width: number): string {
  if (textWidth(text) <= width) return text;
  const letters = [...text];
  let kept = 0;
  let beyond = letters.length;
  while (kept + 1 < beyond) {
    const middle = (kept + beyond) >> 1;
    if (textWidth(`${letters.slice(0, middle).join("")}…`) <= width) kept = middle;
    else beyond = middle;
  }
  return `${letters.slice(0, kept).join("").trimEnd()}…`;
}

// At most that many lines, broken at spaces; the last is shortened where the text is longer.
export function wrapped(text: string, width: number, mostLines: number): string[] {
  const lines: string[] = [];
  let line = "";
  const words = text.split(" ");
  for (let at = 0; at < words.length; at++) {
    const longer = line === "" ? words[at]! : `${line} ${words[at]!}`;
    if (line === "" || textWidth(longer) <= width) {
      line = longer;
      continue;
    }
    if (lines.length + 1 === mostLines) {
      line = [line, ...words.slice(at)].join(" ");
      break;
    }
    lines.push(line);
    line = words[at]!;
  }
  return [...lines, line].map((whole) => shortened(whole, width));
}
