// Stripes and dots as plain shapes of one path. A <pattern> of SVG looks the same on a screen, and becomes a picture for each
// shape in a printed PDF: megabytes of them.

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

// slant: 'rising' goes up to the right. step and wide are measured along a horizontal line.
export interface Stripes {
  slant: "rising" | "falling";
  step: number;
  wide: number;
}

type Point = [x: number, y: number];

const rounded = (value: number): number => Math.round(value * 100) / 100;

// What of a convex shape lies where depth is positive; depth must be linear.
function cut(shape: Point[], depth: (point: Point) => number): Point[] {
  return shape.flatMap((from, at) => {
    const to = shape[(at + 1) % shape.length]!;
    const [a, b] = [depth(from), depth(to)];
    const kept: Point[] = a >= 0 ? [from] : [];
    if (a * b < 0) kept.push([from[0] + ((to[0] - from[0]) * a) / (a - b), from[1] + ((to[1] - from[1]) * a) / (a - b)]);
    return kept;
  });
}

// The stripes within a box; those of two boxes of one drawing go on in each other.
export function stripesIn({ x, y, width, height }: Box, { slant, step, wide }: Stripes): string {
  const across = ([px, py]: Point): number => (slant === "rising" ? px + py : px - py);
  const corners: Point[] = [[x, y], [x + width, y], [x + width, y + height], [x, y + height]];
  const reach = corners.map(across);
  const path: string[] = [];
  for (let middle = Math.floor(Math.min(...reach) / step) * step; middle - wide / 2 < Math.max(...reach); middle += step) {
    const stripe = cut(cut(corners, (point) => across(point) - middle + wide / 2), (point) => middle + wide / 2 - across(point));
    if (stripe.length > 2) path.push(`M${stripe.map(([px, py]) => `${rounded(px)} ${rounded(py)}`).join("L")}Z`);
  }
  return path.join("");
}

// Whole dots only, the field of them in the middle of the box: a small box has one at least.
export function dotsIn({ x, y, width, height }: Box, step: number, radius: number): string {
  const places = (from: number, size: number): number[] => {
    const count = Math.max(1, Math.floor(size / step));
    return Array.from({ length: count }, (_, at) => from + size / 2 + (at - (count - 1) / 2) * step);
  };
  const dot = `a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;
  return places(y, height).flatMap((row) => places(x, width).map((column) => `M${rounded(column - radius)} ${rounded(row)}${dot}`)).join("");
}
