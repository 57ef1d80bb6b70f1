// What holds for a whole figure: how it is seen, which pose the card draws, how it goes on, its arrow, what lies there.
import { labelOf, mainPoseOf, viewOf, type FigureDocument } from "../figure_document.ts";
import { say, wordFor } from "../words.ts";
import { ChoiceField, NumberField, TickField, useDraft } from "./fields.tsx";
import { inOrder } from "./pose_edit.ts";
import { jointNames, placeName, PropRows } from "./stands_fields.tsx";
import { withValue } from "./paths.ts";

const kDirections = ["up", "down", "forward", "back", "left", "right", "forward-up", "forward-down", "back-up", "back-down"];

export function FigureFields({ path, figure, set }: { path: string; figure: FigureDocument; set: (figure: FigureDocument) => void }) {
  const draft = useDraft();
  const labels = figure.pose.map(labelOf);
  const main = figure.pose[mainPoseOf(figure)];
  const view = main ? viewOf(figure, main) : figure.view;
  const arrow = (on: boolean) => draft.change((drill) => withValue(drill, `${path}.arrow`, on ? { from: "pelvis", direction: "up", length: 0.22 } : undefined));
  return (
    <div class="fields">
      <ChoiceField path={`${path}.facing`} label={say("figure.facing")} options={figure.view === "side" ? ["right", "left"] : ["viewer", "away"]} words={(one) => wordFor("facing", one)} none={say("usual")} />
      <ChoiceField path={`${path}.cycle`} label={say("figure.cycle")} options={["loop", "once", "hold"]} words={(one) => wordFor("cycle", one)} none={say("usual")} />
      <ChoiceField path={`${path}.main`} label={say("figure.main")} options={labels} words={(one) => one} none={say("figure.first")} />
      <ChoiceField path={`${path}.ghost`} label={say("figure.ghost")} options={labels} words={(one) => one} none={say("pose.nothing")} />
      <TickField path={`${path}.swap_sides`} label={say("figure.swap_sides")} chosen={(on) => set(inOrder({ ...withValue(figure, "swap_sides", on || undefined), pose: on ? figure.pose.map((pose) => ({ ...pose, at: Math.min(0.499, pose.at ?? 0) })) : figure.pose }))} />
      <label class="tick">
        <input type="checkbox" checked={figure.arrow !== undefined} onChange={(event) => arrow(event.currentTarget.checked)} />
        {say("figure.arrow")}
      </label>
      {figure.arrow ? (
        <>
          <ChoiceField path={`${path}.arrow.from`} label={say("figure.arrow_from")} options={jointNames(view)} words={placeName} />
          <ChoiceField path={`${path}.arrow.direction`} label={say("figure.arrow_direction")} options={kDirections} words={(one) => wordFor("direction", one)} {...(figure.arrow.to ? { none: say("usual") } : {})} />
          <ChoiceField path={`${path}.arrow.to`} label={say("figure.arrow_to")} options={labels} words={(one) => one} none={say("pose.nothing")} />
          <NumberField path={`${path}.arrow.length`} label={say("figure.arrow_length")} least={0.05} most={0.8} step={0.01} optional />
          <NumberField path={`${path}.arrow.bend`} label={say("figure.arrow_bend")} least={-90} most={90} step={5} optional />
          <NumberField path={`${path}.arrow.gap`} label={say("figure.arrow_gap")} least={0} most={0.4} step={0.01} optional />
        </>
      ) : null}
      <PropRows path={`${path}.props`} view={view} title={say("figure.props")} />
    </div>
  );
}
