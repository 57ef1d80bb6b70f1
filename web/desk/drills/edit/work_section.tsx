// How much is done, on which rungs, and what it asks of the body.
import { say, wordFor } from "../words.ts";
import { kAreas, kDoseKinds, kIntensities, kNeeds, kStressKinds, kVouched, type CatalogueDocument, type DoseStep, type Rung, type Stress } from "../drill_document.ts";
import { doseInWords } from "../spoken.ts";
import { withDoseKind, withoutRung, withRungChange, withSources } from "./begin.ts";
import { ChoiceField, NumberField, TextField, TickField, TicksField, useDraft } from "./fields.tsx";
import { kOldest, kYoungest } from "./place_section.tsx";
import { Rows } from "./rows.tsx";

export function RungsSection() {
  const draft = useDraft();
  return (
    <section class="sheet">
      <h2>{say("part.ladder")}</h2>
      <p class="soft">{say("hint.rungs")}</p>
      <Rows<Rung> path="rung" title={say("form.rungs")} named={({ change }) => change} least={2} most={4} fresh={() => ({ key: "", change: "" })} add={say("add_rung")} ordered remove={(index) => draft.change((drill) => withoutRung(drill, index))}>
        {(path, index) => (
          <>
            <TextField path={`${path}.change`} label={say("field.change")} hint={say("hint.change")} typed={(text) => draft.change((drill) => withRungChange(drill, index, text), `${path}.change`)} />
            <TextField path={`${path}.key`} label={say("field.rung_key")} hint={say("hint.rung_key")} />
            <NumberField path={`${path}.ages_from`} label={say("field.rung_ages_from")} least={kYoungest} most={kOldest} optional />
            <NumberField path={`${path}.load`} label={say("field.load")} hint={say("hint.load")} least={0} most={3} step={0.1} optional />
            <TicksField path={`${path}.needs`} label={say("field.rung_needs")} options={kNeeds} words={(one) => wordFor("need", one)} />
            <StressRows path={`${path}.stress`} title={say("form.rung_stress")} least={0} leastGrade={0} />
          </>
        )}
      </Rows>
    </section>
  );
}

function StressRows({ path, title, least, leastGrade }: { path: string; title: string; least: number; leastGrade: number }) {
  const said = ({ area, kind }: Stress) => say("asks.graded", { what: wordFor("area", area), grade: wordFor("stress", kind) });
  return (
    <Rows<Stress> path={path} title={title} named={said} least={least} most={20} fresh={() => ({ area: "knee", kind: "load", grade: 1 })} add={say("add_stress")} compact>
      {(row) => (
        <>
          <ChoiceField path={`${row}.area`} label={say("asks.area")} options={kAreas} words={(one) => wordFor("area", one)} />
          <ChoiceField path={`${row}.kind`} label={say("field.kind")} options={kStressKinds} words={(one) => wordFor("stress", one)} />
          <NumberField path={`${row}.grade`} label={say("field.grade")} hint={say(leastGrade === 0 ? "hint.grade_or_none" : "hint.grade")} least={leastGrade} most={3} />
        </>
      )}
    </Rows>
  );
}

export function DoseSection() {
  const draft = useDraft();
  const { dose, formation, pair } = draft.history.value.now;
  const kinds = formation === "lane" ? ["passes"] : kDoseKinds.filter((kind) => kind !== "passes");
  const sides = (on: boolean) =>
    draft.change((drill) => {
      const { sides: _, side_change_seconds, ...rest } = drill.dose;
      return { ...drill, dose: on ? { ...rest, sides: true, side_change_seconds: side_change_seconds ?? 4 } : rest };
    });
  return (
    <section class="sheet">
      <h2>{say("part.doses")}</h2>
      <div class="fields">
        <ChoiceField path="dose.kind" label={say("field.dose_kind")} options={kinds} words={(one) => wordFor("dose", one)} chosen={(kind) => draft.change((drill) => withDoseKind(drill, kind))} />
        {dose.kind === "reps" ? <NumberField path="dose.tempo_seconds" label={say("field.tempo_seconds")} least={0.5} most={60} step={0.5} /> : null}
        <TickField path="dose.sides" label={say("field.sides")} chosen={sides} />
        {dose.sides ? <NumberField path="dose.side_change_seconds" label={say("field.side_change_seconds")} least={0} most={60} optional /> : null}
        <NumberField path="dose.rest_seconds" label={say("field.rest_seconds")} least={0} most={300} optional step={5} />
      </div>
      <Rows<DoseStep> path="dose.steps" title={say("form.steps")} named={(step) => doseInWords({ dose, formation, ...(pair ? { pair } : {}) }, step)} least={1} most={5} fresh={() => ({ sets: 2, amount: (dose.steps[dose.steps.length - 1]?.amount ?? 5) + 1 })} add={say("add_step")} ordered compact>
        {(path) => (
          <>
            <NumberField path={`${path}.sets`} label={say("field.sets")} least={1} most={6} />
            <NumberField path={`${path}.amount`} label={wordFor("amount", dose.kind)} least={1} most={180} />
          </>
        )}
      </Rows>
    </section>
  );
}

export function AsksSection() {
  const draft = useDraft();
  const { loads, formation } = draft.history.value.now;
  const counts = (on: boolean) =>
    draft.change((drill) => {
      const { loads: _, ...rest } = drill;
      return on ? withSources({ ...rest, loads: { contacts: 1, intensity: "low" } }) : rest;
    });
  return (
    <section class="sheet">
      <h2>{say("part.asks")}</h2>
      <p class="soft">{say("hint.stress")}</p>
      <StressRows path="stress" title={say("form.stress")} least={1} leastGrade={1} />
      <h3>{say("form.loads")}</h3>
      <label class="tick">
        <input type="checkbox" checked={loads !== undefined} onChange={(event) => counts(event.currentTarget.checked)} />
        {say("field.counts")}
      </label>
      {loads ? (
        <div class="fields">
          <NumberField path="loads.contacts" label={say("field.contacts")} hint={say("hint.contacts")} least={0} most={10} step={0.1} optional />
          <ChoiceField path="loads.intensity" label={say("field.intensity")} options={kIntensities} words={(one) => wordFor("intensity", one)} none={say("usual")} />
          <NumberField path="loads.eccentric" label={say("field.eccentric")} least={0} most={5} step={0.1} optional />
          {formation === "lane" ? <TickField path="loads.hard_running" label={say("field.hard_running")} /> : null}
        </div>
      ) : null}
    </section>
  );
}

export function SourcesSection({ catalogue }: { catalogue: CatalogueDocument }) {
  const rows = [...catalogue.sources.source].sort((one, other) => one.key.localeCompare(other.key));
  const said = new Map(rows.map(({ key, author, year }) => [key, author ? `${author.split(",")[0]}, ${year ?? ""}` : wordFor("source", key)]));
  const { loads } = useDraft().history.value.now;
  return (
    <section class="sheet">
      <h2>{say("part.sources")}</h2>
      <p class="soft">{say("hint.sources")}</p>
      {kVouched.filter((one) => one !== "loads" || loads).map((one) => (
        <details key={one}>
          <summary>{wordFor("vouched", one)}</summary>
          <TicksField path={`sources.${one}`} label={wordFor("vouched", one)} options={rows.map(({ key }) => key)} words={(key) => said.get(key) ?? key} />
        </details>
      ))}
    </section>
  );
}
