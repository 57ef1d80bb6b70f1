// Names beside their points such that no two cover each other: each goes where it is nearest to its point among the
// places still free, to the right of it or, where the edge is near, to the left.
import { textWidth } from "./measure.ts";

export const kLabelHeight = 16;

export interface Wanted {
  text: string;
  x: number; // of the point
  y: number;
}

export interface Placed {
  text: string;
  x: number; // of the text's left end
  y: number; // of its middle
  width: number;
}

export interface Within {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const covers = (one: Placed, other: Placed): boolean =>
  one.x < other.x + other.width && other.x < one.x + one.width && Math.abs(one.y - other.y) < kLabelHeight;

export function placed(wanted: Wanted[], within: Within, gap: number): Placed[] {
  const done: Placed[] = [];
  for (const { text, x, y } of wanted) {
    const width = textWidth(text);
    const left = x + gap + width <= within.right ? x + gap : Math.max(within.left, x - gap - width);
    const fits = (candidate: Placed) =>
      candidate.y >= within.top && candidate.y <= within.bottom && !done.some((other) => covers(candidate, other));
    const steps = Array.from({ length: 80 }, (_, step) => (step % 2 === 0 ? step / 2 : -(step + 1) / 2));
    const free = steps.map((step) => ({ text, x: left, y: y + step * (kLabelHeight / 2), width })).find(fits);
    done.push(free ?? { text, x: left, y, width });
  }
  return done;
}
