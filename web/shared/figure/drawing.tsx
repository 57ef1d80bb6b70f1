// One picture of a figure: an ink-line mannequin on its ground line. Phone and desk draw it alike.
import type { Ref } from "preact";
import type { FigureAnswer, FigureFrame } from "../engine/answers.ts";
import { limbsOf, type Limb } from "./limbs.ts";

export const kLine = 14; // of the outline, in thousandths of stature

function LimbDrawing({ limb: { first, strokes } }: { limb: Limb }) {
  const ink = strokes[0]?.side === "far" ? "var(--rule)" : "var(--ink)";
  const drawn = (colour: string, thinner: number) =>
    strokes.map(({ x1, y1, x2, y2, width }, index) => (
      <line key={index} data-stroke={first + index} x1={x1} y1={y1} x2={x2} y2={y2} stroke={colour} stroke-width={Math.max(1, width - thinner)} />
    ));
  return (
    <g stroke-linecap="round">
      {drawn(ink, 0)}
      {drawn("var(--paper)", 2 * kLine)}
    </g>
  );
}

export function BodyDrawing({ frame }: { frame: FigureFrame }) {
  const { x, y, r } = frame.head;
  return (
    <>
      {limbsOf(frame.strokes).map((limb) => (
        <LimbDrawing key={limb.first} limb={limb} />
      ))}
      <circle data-head cx={x} cy={y} r={r - kLine / 2} fill="var(--paper)" stroke="var(--ink)" stroke-width={kLine} />
    </>
  );
}

type Sizes = Pick<FigureAnswer, "width" | "height" | "ground">;

export function GroundLine({ width, ground }: Pick<Sizes, "width" | "ground">) {
  return <line x1={0} x2={width} y1={ground} y2={ground} stroke="var(--rule)" stroke-width={kLine / 2} />;
}

interface Drawing {
  figure: Sizes;
  frame: FigureFrame;
  label: string;
  svg?: Ref<SVGSVGElement>;
}

export function FigureDrawing({ figure, frame, label, svg }: Drawing) {
  return (
    <svg ref={svg ?? null} viewBox={`0 0 ${figure.width} ${figure.height + kLine}`} role="img" aria-label={label}>
      <GroundLine width={figure.width} ground={figure.ground} />
      <BodyDrawing frame={frame} />
    </svg>
  );
}
