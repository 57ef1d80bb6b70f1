// A drill added or changed: the form, the pose editor, and beside them what it looks like, what the checker says, and the
// file to take away.
import { useEffect, useMemo, useState } from "preact/hooks";
import { announce } from "../../shell/announce.ts";
import { Empty, Field, Head } from "../../shell/parts.tsx";
import { go, hashOf } from "../../shell/route.ts";
import type { CatalogueDocument, DrillDocument } from "../drill_document.ts";
import { secondsOf } from "../pictures.tsx";
import { spoken } from "../spoken.ts";
import { apart, say } from "../words.ts";
import { blankDrill, drillLike } from "./begin.ts";
import { openDraft, type Draft } from "./draft.ts";
import { focusOnFault, targetOfFault } from "./fault_place.ts";
import { DraftOf } from "./fields.tsx";
import { figureAt, withFigure, type Target } from "./figure_target.ts";
import { clubFolder } from "../catalogue.ts";
import { PlaceSection } from "./place_section.tsx";
import { PoseEditor } from "./pose_editor.tsx";
import { Preview } from "./preview.tsx";
import { SaveDrill } from "./save_drill.tsx";
import { SaidSection } from "./said_section.tsx";
import { AsksSection, DoseSection, RungsSection, SourcesSection } from "./work_section.tsx";
import { Verdict } from "./verdict.tsx";
import { tomlOf } from "./write_toml.ts";

interface EditProps {
  catalogue: CatalogueDocument;
  id: string | undefined;
  adding: boolean;
  further: Record<string, string>;
}

export function EditDrill({ catalogue, id, adding, further }: EditProps) {
  const found = catalogue.drills.find((drill) => drill.id === id);
  const draft = useMemo(() => (adding || found ? openDraft(`lanework-drill-${adding ? "" : id}`, found ?? blankDrill(), adding ? undefined : id, catalogue) : undefined), []);
  if (!draft) {
    return (
      <Empty title={say("none.what", { id: id ?? "" })}>
        <a href={hashOf("drills")}>{say("back")}</a>
      </Empty>
    );
  }
  return (
    <DraftOf.Provider value={draft}>
      <Editing draft={draft} catalogue={catalogue} id={id} adding={adding} further={further} />
    </DraftOf.Provider>
  );
}

function useKeys(draft: Draft): void {
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== "z") return;
      event.preventDefault();
      act(draft, event.shiftKey ? "redo" : "undo");
    };
    addEventListener("keydown", key);
    return () => removeEventListener("keydown", key);
  }, [draft]);
}

function act(draft: Draft, what: "undo" | "redo"): void {
  const before = draft.history.peek();
  draft[what]();
  if (draft.history.peek() !== before) announce(say(what === "undo" ? "edit.was_undone" : "edit.was_redone"));
}

function Editing({ draft, catalogue, id, adding, further }: EditProps & { draft: Draft }) {
  useKeys(draft);
  const drill = draft.history.value.now;
  const [at, setAt] = useState<{ pose: number; partner: boolean }>({ pose: 0, partner: false });
  const rung = drill.rung.find(({ key }) => key === further.rung)?.key;
  const target: Target = { rung, ...at };
  const figure = figureAt(drill, target) ?? drill.figure;
  const title = adding ? say("edit.title_add") : say("edit.title", { name: apart(drill.name) });
  const pickRung = (key: string) => {
    setAt({ pose: 0, partner: false });
    const { rung: _, ...rest } = further;
    go(hashOf("drills", id, key ? { ...rest, rung: key } : rest), { replace: true });
  };
  const [wanted, setWanted] = useState<string | undefined>(); // a field that is to have the focus
  const show = (field: string) => {
    const place = targetOfFault(field);
    setWanted(field);
    if (!place) return;
    if (place.rung !== rung && (place.rung === undefined || drill.rung.some(({ key }) => key === place.rung))) pickRung(place.rung ?? "");
    setAt({ pose: place.pose, partner: place.partner });
  };
  // Once the figure that it is of is shown.
  useEffect(() => {
    const of = wanted === undefined ? undefined : targetOfFault(wanted);
    if (wanted === undefined || (of && of.rung !== rung && drill.rung.some(({ key }) => key === of.rung))) return;
    focusOnFault(wanted);
    setWanted(undefined);
  }, [wanted, rung, at]);
  return (
    <div class="edit-drill">
      <Head title={title}>
        <p>{say("local_rules")}</p>
      </Head>
      <p class="only-narrow">{say("edit.wide")}</p>
      {adding ? <BeginLike draft={draft} catalogue={catalogue} /> : null}
      <div class="edit-body">
        <form class="edit-form" onSubmit={(event) => event.preventDefault()}>
          <SaidSection adding={adding} />
          <PlaceSection catalogue={catalogue} />
          <RungsSection />
          <DoseSection />
          <AsksSection />
          <SourcesSection catalogue={catalogue} />
        </form>
        <aside class="edit-side">
          <Preview figure={figure} name={drill.name} seconds={secondsOf(drill)} />
          <ToParts />
          <Verdict draft={draft} show={show} />
          <p class="row">
            <button type="button" onClick={() => act(draft, "undo")} disabled={draft.history.value.before.length === 0}>
              {say("edit.undo")}
            </button>
            <button type="button" onClick={() => act(draft, "redo")} disabled={draft.history.value.after.length === 0}>
              {say("edit.redo")}
            </button>
          </p>
          <SaveDrill draft={draft} shipped={adding || clubFolder.value?.drills.has(id ?? "") ? undefined : catalogue.drills.find((one) => one.id === id)} />
          <Download drill={drill} sound={draft.faults.value?.length === 0} />
          <Leave draft={draft} id={adding ? undefined : id} />
        </aside>
      </div>
      <section class="sheet poses">
        <h2>{say("form.poses")}</h2>
        <p class="soft">{say("hint.poses")}</p>
        <div class="row">
          <Field label={say("figure.whose")}>
            {(given) => (
              <select {...given} value={rung ?? ""} onChange={(event) => pickRung(event.currentTarget.value)}>
                <option value="">{say("figure.of_drill")}</option>
                {drill.rung.filter(({ key }) => key !== "").map(({ key, change }) => (
                  <option key={key} value={key}>
                    {say(drill.rung_figure?.[key] ? "figure.of_rung_own" : "figure.of_rung", { rung: apart(change) })}
                  </option>
                ))}
              </select>
            )}
          </Field>
          {rung !== undefined && drill.rung_figure?.[rung] ? (
            <button type="button" onClick={() => draft.change((before) => withFigure(before, { rung }, undefined))}>
              {say("figure.drop_own")}
            </button>
          ) : null}
        </div>
        <PoseEditor target={target} pick={({ pose, partner }) => setAt({ pose, partner })} />
      </section>
    </div>
  );
}

// The form is long: its parts by their headings, and back.
function ToParts() {
  const to = (index: number) => {
    const heading = [...document.querySelectorAll<HTMLElement>(".edit-drill section.sheet > h2")][index];
    if (!heading) return;
    heading.tabIndex = -1;
    heading.scrollIntoView();
    heading.focus({ preventScroll: true });
  };
  const titles = [say("form.said"), say("form.place"), say("part.ladder"), say("part.doses"), say("part.asks"), say("part.sources"), say("form.poses")];
  return (
    <nav class="not-narrow" aria-label={say("edit.parts")}>
      <ul class="to-parts">
        {titles.map((title, index) => (
          <li key={title}>
            <button type="button" class="quiet" onClick={() => to(index)}>
              {title}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function BeginLike({ draft, catalogue }: { draft: Draft; catalogue: CatalogueDocument }) {
  const begin = (like: string) => {
    const drill = catalogue.drills.find(({ id }) => id === like);
    if (drill) draft.change(() => drillLike(drill, catalogue));
  };
  const drills = catalogue.drills.map(spoken).sort((one, other) => one.name.localeCompare(other.name));
  return (
    <Field label={say("edit.like")} hint={say("hint.like")}>
      {(given) => (
        <select {...given} value="" onChange={(event) => begin(event.currentTarget.value)}>
          <option value="">{say("edit.from_nothing")}</option>
          {drills.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

function Download({ drill, sound }: { drill: DrillDocument; sound: boolean }) {
  const take = () => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([tomlOf(drill)], { type: "application/toml" }));
    link.download = `${drill.id || "drill"}.toml`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    announce(say("edit.was_taken", { file: link.download }));
  };
  return (
    <>
      <button type="button" onClick={take}>
        {say("edit.download")}
      </button>
      <p class="soft">{say(sound ? "edit.download_what" : "edit.download_unsound")}</p>
    </>
  );
}

function Leave({ draft, id }: { draft: Draft; id: string | undefined }) {
  const leave = () => {
    draft.forget();
    go(hashOf("drills", id));
  };
  return (
    <button type="button" onClick={leave}>
      {say(draft.changed() ? "edit.throw_away" : "edit.leave")}
    </button>
  );
}
