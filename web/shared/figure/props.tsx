// A thing in the picture of a figure, by the shapes that the door gives: docs/formats/door.md.
import type { FigureProp, PropPlace, PropShape } from "../engine/answers.ts";

const kEdge = 8; // thousandths of stature

const kInks: Record<PropShape["ink"], { fill: string; stroke: string; "stroke-width": number }> = {
  outline: { fill: "var(--paper)", stroke: "var(--ink)", "stroke-width": kEdge },
  light: { fill: "var(--chalk)", stroke: "var(--soft)", "stroke-width": kEdge / 2 },
  solid: { fill: "var(--ink)", stroke: "none", "stroke-width": 0 },
  line: { fill: "none", stroke: "var(--ink)", "stroke-width": kEdge },
  thin: { fill: "none", stroke: "var(--soft)", "stroke-width": kEdge / 2 },
};
const isOpen = (ink: PropShape["ink"]): boolean => ink === "line" || ink === "thin";

export function pathOf({ ink, points = [], r }: PropShape): string {
  if (r !== undefined) return `M${-r} 0A${r} ${r} 0 1 1 ${r} 0A${r} ${r} 0 1 1 ${-r} 0Z`;
  const spots = points.filter((_, at) => at % 2 === 0).map((x, at) => `${x} ${points[2 * at + 1] ?? 0}`);
  return `M${spots.join("L")}${isOpen(ink) ? "" : "Z"}`;
}

// Shapes of one ink that follow each other are one path: there is less to paint anew when the figure moves.
export function pathsOf(shapes: PropShape[]): { ink: PropShape["ink"]; d: string }[] {
  const out: { ink: PropShape["ink"]; d: string }[] = [];
  for (const shape of shapes) {
    const last = out[out.length - 1];
    if (last?.ink === shape.ink) last.d += pathOf(shape);
    else out.push({ ink: shape.ink, d: pathOf(shape) });
  }
  return out;
}

// What is written at every moment: where a thing is, or that it is not there.
export function placeWritten({ x, y, x2, y2 }: PropPlace): { [attribute: string]: string } {
  if (x === undefined || y === undefined) return { visibility: "hidden" };
  const [left, top] = [Math.round(x), Math.round(y)];
  if (x2 === undefined || y2 === undefined) return { visibility: "visible", transform: `translate(${left} ${top})` };
  return { visibility: "visible", d: `M${left} ${top}L${Math.round(x2)} ${Math.round(y2)}` };
}

export function PropDrawing({ prop: { kind, shapes }, index, place }: { prop: FigureProp; index: number; place: PropPlace }) {
  if (kind === "band") return <path data-prop={index} {...kInks.line} {...placeWritten(place)} />;
  return (
    <g data-prop={index} stroke-linejoin="round" {...placeWritten(place)}>
      {pathsOf(shapes).map(({ ink, d }) => (
        <path key={d} d={d} {...kInks[ink]} />
      ))}
    </g>
  );
}
