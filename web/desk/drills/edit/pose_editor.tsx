// The pose editor: whose figure, which key pose, the stage with its joints, the same joints as sliders, and how it stands.
import { useState } from "preact/hooks";
import { labelOf, viewOf, type FigureDocument, type Partner } from "../figure_document.ts";
import { secondsOf } from "../pictures.tsx";
import { apart, say } from "../words.ts";
import { useDraft } from "./fields.tsx";
import { FigureFields } from "./figure_fields.tsx";
import { figureAt, partnerFigure, pathOf, withFigure, withPartnerAngles, type Target } from "./figure_target.ts";
import { angleOf, jointAngles, type JointAngle } from "./joints.ts";
import { JointSliders } from "./joint_sliders.tsx";
import { PartnerFields } from "./partner_fields.tsx";
import { changePose, renamePose, turnJoint } from "./pose_edit.ts";
import { PoseStage } from "./pose_stage.tsx";
import { Preview } from "./preview.tsx";
import { PoseStrip } from "./pose_strip.tsx";
import { PoseFields } from "./stands_fields.tsx";

export function PoseEditor({ target, pick }: { target: Target; pick: (target: Target) => void }) {
  const draft = useDraft();
  const [picked, setPicked] = useState<string | undefined>();
  const [both, setBoth] = useState(false);
  const [legs_stay, setLegsStay] = useState(true);
  const [onion, setOnion] = useState(true);
  const drill = draft.history.value.now;
  const figure = figureAt(drill, target);
  const set = (next: FigureDocument | undefined, kind?: string) => draft.change((before) => withFigure(before, target, next), kind);
  if (!figure) return <OwnFigure target={target} set={set} />;
  const index = Math.min(target.pose, figure.pose.length - 1);
  const pose = figure.pose[index];
  if (!pose) return null;
  const view = viewOf(figure, pose);
  const partner = target.partner ? partnerFigure(figure, index) : undefined;
  const shown = partner ?? figure;
  const at = partner ? 0 : index;
  const posture = shown.pose[at];
  const path = `${pathOf(target)}.pose.${index + 1}`;
  const sliders = partner ? `${path}.partner` : path;
  const turn = (joint: JointAngle, degrees: number | undefined) => {
    const turned = turnJoint(shown, at, { joint, degrees, both, legs_stay });
    set(partner ? withPartnerAngles(figure, index, turned) : turned, `${path} ${target.partner} ${joint.name}`);
  };
  // By how much from the newest there is: two moves may come before the screen is drawn anew.
  const turnBy = (angle: string, by: number) => {
    const joint = jointAngles(view).find(({ name }) => name === angle);
    if (joint) turn(joint, angleOf(posture?.angles, joint) + by);
  };
  const held = Object.keys((target.partner ? pose.partner?.hold : pose.hold) ?? {}).map((hand) => hand.replace("hand_", ""));
  const choose = (angle: string) => {
    setPicked(angle);
    document.getElementById(`joint-${sliders.replaceAll(".", "-")}-${angle}`)?.focus({ preventScroll: true });
  };
  return (
    <>
      <div class="strip-and-motion">
        <div>
          <PoseStrip figure={figure} pose={index} pick={(to) => pick({ ...target, pose: to, partner: false })} set={set} />
        </div>
        <Preview figure={figure} name={drill.name} seconds={secondsOf(drill)} />
      </div>
      <fieldset class="row options">
        <legend class="out-of-sight">{say("pose.how_to_turn")}</legend>
        <label class="tick">
          <input type="checkbox" checked={both} onChange={(event) => setBoth(event.currentTarget.checked)} />
          {say("pose.both")}
        </label>
        <label class="tick">
          <input type="checkbox" checked={legs_stay} onChange={(event) => setLegsStay(event.currentTarget.checked)} />
          {say("pose.legs_stay")}
        </label>
        <label class="tick">
          <input type="checkbox" checked={onion} onChange={(event) => setOnion(event.currentTarget.checked)} />
          {say("pose.onion")}
        </label>
        {pose.partner ? (
          <label class="tick">
            <input type="checkbox" checked={target.partner} onChange={(event) => pick({ ...target, partner: event.currentTarget.checked })} />
            {say("pose.turn_partner")}
          </label>
        ) : null}
      </fieldset>
      <div class="pose-body">
        <PoseStage figure={shown} pose={at} onion={onion && !partner} picked={picked} onPick={choose} onTurn={turnBy} onSettle={draft.settle} />
        <JointSliders view={view} angles={posture?.angles} picked={picked} path={sliders} held={held} contacts={posture?.contacts ?? []} onPick={setPicked} onTurn={turn} onSettle={draft.settle} />
      </div>
      <details open>
        <summary>{say("pose.stands", { pose: apart(labelOf(pose, index)) })}</summary>
        <PoseFields path={path} view={view} partnered={pose.partner !== undefined} rename={(label) => set(renamePose(figure, index, label), `${path}.label`)} />
      </details>
      <details>
        <summary>{say("pose.partner")}</summary>
        <PartnerFields path={`${path}.partner`} view={view} partner={pose.partner} set={(next: Partner | undefined) => set(changePose(figure, index, { partner: next } as never))} />
      </details>
      <details>
        <summary>{say("figure.whole")}</summary>
        <FigureFields path={pathOf(target)} figure={figure} set={set} />
      </details>
    </>
  );
}

function OwnFigure({ target, set }: { target: Target; set: (figure: FigureDocument | undefined) => void }) {
  const { figure } = useDraft().history.value.now;
  return (
    <p>
      {say("figure.none_own")}{" "}
      <button type="button" onClick={() => set(figure ? structuredClone(figure) : undefined)} disabled={!figure || target.rung === undefined}>
        {say("figure.make_own")}
      </button>
    </p>
  );
}
