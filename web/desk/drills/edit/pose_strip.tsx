// The key poses of a figure in their order, and what can be done to the row of them.
import { announce } from "../../shell/announce.ts";
import { labelOf, viewOf, type FigureDocument, type View } from "../figure_document.ts";
import { SmallFigure } from "../pictures.tsx";
import { apart, say, wordFor } from "../words.ts";
import { addPose, mayAddPose, mirrorPose, movePose, removePose } from "./pose_edit.ts";

interface StripProps {
  figure: FigureDocument;
  pose: number;
  pick: (pose: number) => void;
  set: (figure: FigureDocument) => void;
}

// One pose as a figure of its own; kept by the pose, so that a picture is asked for when it changed and not before.
const alone = new WeakMap<object, FigureDocument>();
function aloneOf(figure: FigureDocument, index: number): FigureDocument | undefined {
  const pose = figure.pose[index];
  if (!pose) return undefined;
  const view = viewOf(figure, pose);
  const had = alone.get(pose);
  if (had && had.view === view && had.facing === figure.facing) return had;
  const { view: _, at: __, ...rest } = pose;
  const made: FigureDocument = { view, ...(figure.facing && view === figure.view ? { facing: figure.facing } : {}), cycle: "hold", pose: [rest] };
  alone.set(pose, made);
  return made;
}

export function PoseStrip({ figure, pose, pick, set }: StripProps) {
  const at = figure.pose[pose];
  const name = at ? labelOf(at, pose) : "";
  const other: View = at && viewOf(figure, at) === "side" ? "front" : "side";
  const act = (next: FigureDocument, to: number, told: string) => {
    if (next === figure) return;
    set(next);
    pick(to);
    announce(told);
  };
  // The other view has angles of its own: it begins standing straight.
  const addOther = () => {
    if (!mayAddPose(figure)) return;
    const taken = figure.pose.filter((one) => viewOf(figure, one) === other).length;
    const label = `${wordFor("view", other)} ${taken + 1}`;
    const moment = taken === 0 ? 0 : Math.min(figure.swap_sides ? 0.499 : 1, (figure.pose.filter((one) => viewOf(figure, one) === other)[taken - 1]?.at ?? 0) + 0.2);
    const next = { ...figure, pose: [...figure.pose, { label, ...(other === figure.view ? {} : { view: other }), at: moment, contacts: ["feet"], angles: { shoulder: 10 } }] };
    act(next, figure.pose.length, say("pose.was_added"));
  };
  return (
    <>
      <ul class="pose-strip" aria-label={say("pose.all")}>
        {figure.pose.map((one, index) => (
          <li key={index}>
            <button type="button" aria-pressed={index === pose} onClick={() => pick(index)}>
              <SmallFigure figure={aloneOf(figure, index)} />
              <bdi>{labelOf(one, index)}</bdi>
              <span class="soft"> {wordFor("view", viewOf(figure, one))}, {Math.round((one.at ?? 0) * 100)} %</span>
            </button>
          </li>
        ))}
      </ul>
      <p class="row">
        <button type="button" disabled={!mayAddPose(figure)} onClick={() => act(addPose(figure, pose), pose + 1, say("pose.was_added"))}>
          {say("pose.add")}
        </button>
        <button type="button" disabled={!mayAddPose(figure)} onClick={addOther}>
          {say("pose.add_other", { view: wordFor("view", other) })}
        </button>
        <button type="button" onClick={() => act(movePose(figure, pose, -1), pose - 1, say("rows.was_moved_up"))} disabled={pose === 0}>
          {say("pose.earlier")}
        </button>
        <button type="button" onClick={() => act(movePose(figure, pose, 1), pose + 1, say("rows.was_moved_down"))} disabled={pose === figure.pose.length - 1}>
          {say("pose.later")}
        </button>
        <button type="button" onClick={() => act(mirrorPose(figure, pose), pose, say("pose.was_mirrored"))}>
          {say(at && viewOf(figure, at) === "side" ? "pose.mirror_side" : "pose.mirror_front")}
        </button>
        <button type="button" disabled={figure.pose.length < 2} onClick={() => act(removePose(figure, pose), Math.max(0, pose - 1), say("rows.was_removed"))}>
          {say("pose.remove", { pose: apart(name) })}
        </button>
      </p>
    </>
  );
}
