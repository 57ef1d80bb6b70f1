// The key pose on its ground line, its neighbours behind it in chalk, and the points that can be dragged. For the keyboard
// and a reader there are the sliders beside it (joint_sliders.tsx): the same angles.
import { useEffect, useRef, useState } from "preact/hooks";
import type { FigureFrame, FigureProp } from "../../../shared/engine/answers.ts";
import { kLine, SceneDrawing } from "../../../shared/figure/drawing.tsx";
import type { FigureDocument, View } from "../figure_document.ts";
import { askFigure } from "../figures.ts";
import { say } from "../words.ts";
import { handlesOf, turnTowards, type Handle } from "./drag.ts";
import { extentOf, picturesAsked, shownFrames, type Extent } from "./pose_pictures.ts";

interface Shown {
  view: View;
  turned: boolean;
  width: number;
  ground: number;
  props: FigureProp[];
  frames: FigureFrame[]; // as asked for: the pose itself is the one at 'self'
  self: number;
}
interface StageProps {
  figure: FigureDocument;
  pose: number;
  onion: boolean;
  picked: string | undefined; // an angle
  onPick: (angle: string) => void;
  onTurn: (angle: string, by: number) => void; // degrees more than it is
  onSettle: () => void;
}

const kHandle = 20; // radius, thousandths of stature
const kAround = 90; // room about the bodies

// The newest picture that the door gave; while a pose cannot be drawn, the last that could.
function useShown(figure: FigureDocument, pose: number, onion: boolean): Shown | undefined {
  const [shown, setShown] = useState<Shown | undefined>();
  useEffect(() => {
    const same = (index: number) => figure.pose[index] !== undefined && (figure.pose[index]?.view ?? figure.view) === (figure.pose[pose]?.view ?? figure.view);
    const poses = (onion ? [pose - 1, pose, pose + 1] : [pose]).filter(same);
    const asked = picturesAsked(figure, poses);
    if (!asked) return undefined;
    let wanted = true;
    const { facing } = figure;
    void askFigure(asked.figure, { frames: asked.frames, kind: "stage" }).then((answer) => {
      if (!wanted || answer.answer !== "figure") return;
      setShown({ view: asked.view, turned: facing === "left" || facing === "away", width: answer.width, ground: answer.ground, props: answer.props ?? [], frames: shownFrames(answer, asked), self: poses.indexOf(pose) });
    });
    return () => {
      wanted = false;
    };
  }, [figure, pose, onion]);
  return shown;
}

export function PoseStage({ figure, pose, onion, picked, onPick, onTurn, onSettle }: StageProps) {
  const shown = useShown(figure, pose, onion);
  const svg = useRef<SVGSVGElement>(null);
  const dragged = useRef<string | undefined>(undefined);
  const pointer = useRef<{ x: number; y: number } | undefined>(undefined);
  const [box, setBox] = useState<Extent | undefined>();
  const self = shown?.frames[shown.self];
  const handles = shown && self ? handlesOf(shown.view, self, shown.turned) : [];

  // The picture's edges stay while a joint is dragged; they follow when it is let go.
  useEffect(() => {
    if (shown && dragged.current === undefined) setBox(extentOf(shown.frames, shown.props));
  }, [shown]);
  // A pointer that was quicker than the door's answer goes on from the newest picture.
  const turn = () => {
    const handle = handles.find(({ angle }) => angle === dragged.current);
    if (!handle || !pointer.current) return;
    const by = turnTowards(handle, pointer.current);
    if (Math.abs(by) >= 0.5) onTurn(handle.angle, by);
  };
  useEffect(turn, [shown]);

  const placeOf = (event: PointerEvent) => {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return undefined;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return { x, y };
  };
  const begin = (event: PointerEvent, handle: Handle) => {
    event.preventDefault();
    svg.current?.setPointerCapture(event.pointerId);
    dragged.current = handle.angle;
    pointer.current = undefined;
    onPick(handle.angle);
  };
  const move = (event: PointerEvent) => {
    if (dragged.current === undefined) return;
    pointer.current = placeOf(event);
    turn();
  };
  const end = () => {
    if (dragged.current === undefined) return;
    dragged.current = undefined;
    pointer.current = undefined;
    if (shown) setBox(extentOf(shown.frames, shown.props));
    onSettle();
  };
  if (!shown || !self || !box) return <div class="pose-stage" />;
  const left = box.left - kAround;
  const top = box.top - kAround;
  return (
    <div class="pose-stage">
      <svg ref={svg} viewBox={`${left} ${top} ${box.right + kAround - left} ${shown.ground + kAround - top}`} role="img" aria-label={say("pose.stage")} onPointerMove={move} onPointerUp={end} onPointerCancel={end}>
        <line x1={left} x2={box.right + kAround} y1={shown.ground} y2={shown.ground} stroke="var(--rule)" stroke-width={kLine / 2} />
        {shown.frames.map((frame, index) =>
          index === shown.self ? null : (
            <g key={index} class="onion">
              <SceneDrawing frame={frame} props={shown.props} />
            </g>
          ),
        )}
        <SceneDrawing frame={self} props={shown.props} />
        {handles.map((handle) => (
          <circle key={handle.angle} class={`handle${handle.angle === picked ? " picked" : ""}`} data-angle={handle.angle} cx={handle.at.x} cy={handle.at.y} r={kHandle} onPointerDown={(event) => begin(event, handle)} />
        ))}
      </svg>
    </div>
  );
}
