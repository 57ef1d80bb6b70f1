// One picture of a figure: an ink-line mannequin on its ground line, its partner in thinner ink behind it, and the things
// around them. Phone and desk draw it alike.
import type { Ref } from "preact";
import type { FigureAnswer, FigureBody, FigureFrame, FigureProp } from "../engine/answers.ts";
import { bonesOf, limbsOf, pathOfBone, type Limb } from "./limbs.ts";
import { PropDrawing } from "./props.tsx";

export const kLine = 14; // of the outline, in thousandths of stature
const kThinLine = 6; // of the partner's

function LimbDrawing({ limb, body, ink, line }: { limb: Limb; body: FigureBody; ink: string; line: number }) {
  const drawn = (colour: string, thinner: number) =>
    bonesOf(limb).map(({ first, count, width }) => (
      <path key={first} data-stroke={first} data-count={count} d={pathOfBone(body.strokes, { first, count })} stroke={colour} stroke-width={Math.max(1, width - thinner)} />
    ));
  return (
    <g fill="none" stroke-linecap="round">
      {drawn(ink, 0)}
      {drawn("var(--paper)", 2 * line)}
    </g>
  );
}

// second: who does not do the drill.
function Body({ body, second = false }: { body: FigureBody; second?: boolean }) {
  const { strokes, head } = body;
  const line = second ? kThinLine : kLine;
  const ink = second ? "var(--soft)" : "var(--ink)";
  return (
    <g data-body={second ? "partner" : "figure"}>
      {limbsOf(strokes).map((limb) => (
        <LimbDrawing key={limb.first} limb={limb} body={body} ink={limb.strokes[0]?.side === "far" ? "var(--rule)" : ink} line={line} />
      ))}
      <circle data-head cx={head.x} cy={head.y} r={head.r - line / 2} fill="var(--paper)" stroke={ink} stroke-width={line} />
    </g>
  );
}

interface SceneProps {
  frame: FigureFrame;
  props?: FigureProp[] | undefined;
}

// As the card draws it: what stands there, the partner, the figure, what it has in its hands.
export function SceneDrawing({ frame, props = [] }: SceneProps) {
  const things = (before: boolean) => props.map((prop, index) => (prop.before === before ? <PropDrawing key={index} index={index} prop={prop} place={frame.props?.[index] ?? {}} /> : null));
  return (
    <>
      {things(false)}
      {frame.partner ? <Body body={frame.partner} second /> : null}
      <Body body={frame} />
      {things(true)}
    </>
  );
}

type Sizes = Pick<FigureAnswer, "width" | "height" | "ground" | "props">;

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
      <SceneDrawing frame={frame} props={figure.props} />
    </svg>
  );
}
