// Where in a session a drill stands, who may do it, how the squad stands, and what must be there.
import { say, wordFor } from "../words.ts";
import { kFamilies, kFormations, kNeeds, kPhases, kShapes, kSurfaces, type CatalogueDocument } from "../drill_document.ts";
import { withFormation } from "./begin.ts";
import { ChoiceField, NumberField, TickField, TicksField, useDraft } from "./fields.tsx";

export const kYoungest = 8;
export const kOldest = 19;

export function PlaceSection({ catalogue }: { catalogue: CatalogueDocument }) {
  const draft = useDraft();
  const drill = draft.history.value.now;
  const phases = catalogue.families.family.find(({ key }) => key === drill.family)?.phases ?? [...kPhases];
  // The phase goes with the family where the family has only one.
  const family = (key: string) =>
    draft.change((before) => {
      const allowed = catalogue.families.family.find((row) => row.key === key)?.phases ?? [];
      return { ...before, family: key, phase: allowed.includes(before.phase) ? before.phase : (allowed[0] ?? before.phase) };
    });
  return (
    <section class="sheet">
      <h2>{say("form.place")}</h2>
      <div class="fields">
        <ChoiceField path="family" label={say("field.family")} options={kFamilies} words={(one) => wordFor("family", one)} chosen={family} />
        <ChoiceField path="phase" label={say("field.phase")} options={phases} words={(one) => wordFor("phase_long", one)} />
        <ChoiceField path="formation" label={say("field.formation")} options={kFormations} words={(one) => wordFor("formation_long", one)} chosen={(one) => draft.change((before) => withFormation(before, one))} />
        <NumberField path="ages.from" label={say("field.ages_from")} least={kYoungest} most={kOldest} />
        <NumberField path="ages.to" label={say("field.ages_to")} least={kYoungest} most={kOldest} />
        <NumberField path="telling_seconds" label={say("field.telling_seconds")} hint={say("hint.telling_seconds")} least={0} most={180} step={5} />
      </div>
      <TicksField path="needs" label={say("field.needs")} options={kNeeds} words={(one) => wordFor("need", one)} />
      <TicksField path="not_on" label={say("field.not_on")} options={kSurfaces} words={(one) => wordFor("surface", one)} />
      {drill.formation === "lane" ? (
        <LaneFields catalogue={catalogue} />
      ) : (
        <div class="fields">
          <NumberField path="space_metres.width" label={say("field.space_width")} hint={say(drill.formation === "pairs" ? "hint.space_pair" : "hint.space")} least={0.5} most={20} step={0.5} />
          <NumberField path="space_metres.length" label={say("field.space_length")} least={0.5} most={20} step={0.5} />
        </div>
      )}
      {drill.formation === "pairs" ? (
        <div class="fields">
          <TickField path="pair.both_at_once" label={say("field.both_at_once")} />
          <NumberField path="pair.swap_seconds" label={say("field.swap_seconds")} least={0} most={60} optional />
        </div>
      ) : null}
    </section>
  );
}

function LaneFields({ catalogue }: { catalogue: CatalogueDocument }) {
  const draft = useDraft();
  const { lane } = draft.history.value.now;
  const gaits = catalogue.gaits.gait.map(({ key }) => key);
  // A share of the top speed belongs to running, a time to a stop.
  const out = (gait: string) =>
    draft.change((drill) => {
      if (!drill.lane) return drill;
      const { share_of_top_speed, ...rest } = drill.lane;
      return { ...drill, lane: { ...rest, out: gait, ...(gait === "run" ? { share_of_top_speed: share_of_top_speed ?? 80 } : {}) } };
    });
  const stops = (on: boolean) =>
    draft.change((drill) => {
      if (!drill.lane) return drill;
      const { stop_seconds, stop_at_cones: _, ...rest } = drill.lane;
      return { ...drill, lane: on ? { ...rest, stop_at_cones: true, stop_seconds: stop_seconds ?? 2 } : rest };
    });
  return (
    <div class="fields">
      <ChoiceField path="lane.shape" label={say("field.shape")} options={kShapes} words={(one) => wordFor("shape", one)} />
      <ChoiceField path="lane.out" label={say("field.out")} options={gaits} words={(one) => wordFor("gait", one)} chosen={out} />
      {lane?.out === "run" ? <NumberField path="lane.share_of_top_speed" label={say("field.share_of_top_speed")} least={30} most={100} step={5} /> : null}
      <ChoiceField path="lane.back" label={say("field.back")} options={gaits.filter((gait) => gait !== "run")} words={(one) => wordFor("gait", one)} {...(lane?.shape === "out-and-back" ? {} : { none: say("usual") })} />
      <TickField path="lane.stop_at_cones" label={say("field.stop_at_cones")} chosen={stops} />
      {lane?.stop_at_cones ? <NumberField path="lane.stop_seconds" label={say("field.stop_seconds")} least={0.5} most={30} step={0.5} /> : null}
      <NumberField path="lane.turn_seconds" label={say("field.turn_seconds")} least={0} most={30} step={0.5} optional />
      <NumberField path="lane.release_gap_seconds" label={say("field.release_gap_seconds")} hint={say("hint.release_gap_seconds")} least={0.5} most={30} step={0.5} />
      <NumberField path="lane.least_lane_metres" label={say("field.least_lane_metres")} least={5} most={60} optional />
    </div>
  );
}
