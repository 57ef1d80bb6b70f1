// Where squads train: each place in a few numbers, drawn to scale while they are typed.
import { useState } from "preact/hooks";
import { list } from "../../shared/words/words.ts";
import { undo } from "../shell/undo.ts";
import { change, type Content, contentOf, draftsAsTheyAre, paths, remove, write } from "./club_draft.ts";
import { kClub } from "./club_step.tsx";
import { idFrom } from "./ids.ts";
import { NumberField, TextField } from "./fields.tsx";
import { PlaceDrawing } from "./place_drawing.tsx";
import { rowsOf } from "./rows.tsx";
import { say } from "./words.ts";

export interface StripRow {
  id: string;
  file?: string;
}

export function strips(): StripRow[] {
  const rows = contentOf(kClub)?.strip;
  return Array.isArray(rows) ? (rows as StripRow[]) : [];
}

export const kFirstPlace: Content = { lane_length_metres: 15, cone_spacing_metres: 5, lanes: 2, lane_gap_metres: 3, area_metres: { width: 10, length: 15 }, surface: [], soft_ground: true };

export function PlacesStep() {
  const [name, setName] = useState("");
  const files = paths.value.filter((path) => path.startsWith("strips/") && contentOf(path));
  const add = (event: Event) => {
    event.preventDefault();
    const id = idFrom(name, strips().map((one) => one.id));
    if (id === "") return;
    write(`strips/${id}.toml`, { content: { name: name.trim(), ...kFirstPlace } });
    change(kClub, { strip: [...strips(), { id, file: `strips/${id}.toml` }] });
    setName("");
  };
  return (
    <>
      <p>{say("place.what")}</p>
      {files.map((path) => (
        <PlaceForm key={path} path={path} />
      ))}
      <form class="row top" onSubmit={add}>
        <TextField label={say("place.new")} value={name} onChange={setName} />
        <button type="submit">{say("place.add")}</button>
      </form>
    </>
  );
}

// Names of the squads that go there, always or on one evening.
function squadsAt(path: string): string[] {
  const id = strips().find(({ file }) => file === path)?.id;
  const squads = paths.value.flatMap((one) => (one.startsWith("squads/") ? [contentOf(one) ?? {}] : []));
  return squads.filter(({ strip, week }) => strip === `../${path}` || (id !== undefined && rowsOf(week).some((evening) => evening.strip === id))).map(({ name }) => String(name));
}

// A place where somebody trains stays: first they get another.
function TakeOut({ path, name }: { path: string; name: string }) {
  const squads = squadsAt(path);
  const takeOut = () => {
    const restore = draftsAsTheyAre();
    remove(path);
    change(kClub, { strip: strips().filter(({ file }) => file !== path) });
    undo.offer({ words: say("place.is_out", { place: name }), undo: restore });
  };
  if (squads.length > 0) {
    return (
      <p class="soft">
        <bdi>{say("place.used", { squads: list(squads) })}</bdi>
      </p>
    );
  }
  return (
    <button type="button" onClick={takeOut}>
      {say("place.away_with_it")}
    </button>
  );
}

function PlaceForm({ path }: { path: string }) {
  const place = contentOf(path) ?? {};
  const area = (place.area_metres ?? {}) as Content;
  const set = (keys: Content) => change(path, keys);
  return (
    <section class="sheet place" aria-label={String(place.name ?? path)}>
      <div>
        <TextField label={say("place.name")} value={place.name} onChange={(name) => set({ name })} />
        <div class="numbers">
          <NumberField label={say("place.length")} value={place.lane_length_metres} least={5} most={60} step={0.5} onChange={(metres) => set({ lane_length_metres: metres })} />
          <NumberField label={say("place.spacing")} value={place.cone_spacing_metres} least={1} most={20} step={0.5} onChange={(metres) => set({ cone_spacing_metres: metres })} />
          <NumberField label={say("place.lanes")} value={place.lanes} least={1} most={12} onChange={(lanes) => set({ lanes })} />
          <NumberField label={say("place.gap")} value={place.lane_gap_metres} least={1} most={10} step={0.5} onChange={(metres) => set({ lane_gap_metres: metres })} />
          <NumberField label={say("place.width")} value={area.width} least={2} most={100} step={0.5} onChange={(width) => set({ area_metres: { ...area, width } })} />
          <NumberField label={say("place.depth")} value={area.length} least={2} most={100} step={0.5} onChange={(length) => set({ area_metres: { ...area, length } })} />
        </div>
        <label class="tick">
          <input type="checkbox" checked={place.soft_ground === true} onChange={(event) => set({ soft_ground: event.currentTarget.checked })} />
          {say("place.soft")}
        </label>
        <TakeOut path={path} name={String(place.name ?? "")} />
      </div>
      <PlaceDrawing place={place} />
    </section>
  );
}
