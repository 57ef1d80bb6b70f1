// Lay out: the strip to scale, and the same in metres and paces.
import { eveningOf } from "../evening/request.ts";
import type { EveningState } from "../evening/evening_state.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { many, number, say } from "../words/words.ts";
import { Head, HurtButton } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";
import { StripDrawing } from "./strip_drawing.tsx";

const kPaceMetres = 0.75;

export interface Place {
  lanes: number;
  length: number; // metres, like all here
  every: number;
  gap: number;
  area?: { width: number; length: number };
}

// Keys that a strip leaves out are as docs/formats/squad.md has them.
export function placeOf(strip: DoorTable, facts: EveningState["facts"]): Place {
  const metres = (key: string, usual: number) => (typeof strip[key] === "number" ? (strip[key] as number) : usual);
  const length = facts.length_metres ?? metres("lane_length_metres", 15);
  const place: Place = {
    lanes: facts.lanes ?? metres("lanes", 1),
    length,
    every: Math.min(length, metres("cone_spacing_metres", 5)),
    gap: metres("lane_gap_metres", 3),
  };
  const area = strip["area_metres"] as DoorTable | undefined;
  const [width, long] = [Number(area?.["width"] ?? 0), Number(area?.["length"] ?? 0)];
  return width > 0 && long > 0 ? { ...place, area: { width, length: long } } : place;
}

function distance(metres: number): string {
  return say("lay_out.distance", { metres: number(metres), paces: number(Math.round(metres / kPaceMetres)) });
}

function Lines({ place }: { place: Place }) {
  const cones = (Math.floor(place.length / place.every + 1e-6) + 1) * place.lanes;
  return (
    <ul class="list">
      <li>
        <strong>
          {many("cones", cones)}, {many("lanes", place.lanes)}
        </strong>
      </li>
      <li>
        <span>{say("lay_out.lane_long")}</span> <strong>{distance(place.length)}</strong>
      </li>
      <li>
        <span>{say("lay_out.every")}</span> <strong>{distance(place.every)}</strong>
      </li>
      {place.lanes > 1 && (
        <li>
          <span>{say("lay_out.apart")}</span> <strong>{distance(place.gap)}</strong>
        </li>
      )}
      {place.area && (
        <li>
          <span>{say("lay_out.area")}</span>{" "}
          <strong>{say("lay_out.by", { length: number(place.area.length), width: number(place.area.width) })}</strong>
        </li>
      )}
    </ul>
  );
}

export function LayOutScreen({ pitch }: { pitch: Pitch }) {
  const state = pitch.evening.value;
  const evening = eveningOf(pitch.pack, state);
  if (!evening) return null;
  const place = placeOf(evening.documents.strip, state.facts);
  return (
    <>
      <Head title={say("lay_out.title")}>
        <HurtButton pitch={pitch} />
        <button type="button" onClick={() => pitch.happen({ event: "go", screen: "tonight" })}>
          {say("lay_out.change")}
        </button>
      </Head>
      <main>
        <p>{evening.strip}</p>
        <div class="beside">
          <StripDrawing place={place} />
          <div>
            <Lines place={place} />
            <p class="soft">{say("lay_out.pace")}</p>
          </div>
        </div>
      </main>
      <footer class="bar">
        <button type="button" class="main" onClick={() => pitch.happen({ event: "start", at: Date.now() })}>
          {state.run ? say("lay_out.go_on") : say("lay_out.start")}
        </button>
      </footer>
    </>
  );
}
