// What a coach can say about tonight beyond three numbers; each opens when it is wanted.
import { useState } from "preact/hooks";
import type { Facts, Kit, Surface } from "../evening/evening_state.ts";
import { takesPart, type Place } from "../evening/sore.ts";
import type { Evening } from "../package/evening_package.ts";
import { say } from "../words/words.ts";
import { Noted } from "./noted.tsx";
import { Stepper, Tick, Toggle } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";
import { PlacePicker, whoIs, WhoPicker } from "./who.tsx";

const kSurfaces: Surface[] = ["wet", "hard", "uneven", "dark"];
const kKit: Kit[] = ["cones", "balls", "mats"];

const change = (pitch: Pitch, facts: Partial<Facts>) => pitch.happen({ event: "facts", facts });

function put<T>(list: readonly T[], one: T, there: boolean): T[] {
  const others = list.filter((each) => each !== one);
  return there ? [...others, one] : others;
}

export function Ground({ pitch, evening }: { pitch: Pitch; evening: Evening }) {
  const { facts } = pitch.evening.value;
  const { strip } = evening.documents;
  const surface = facts.surface ?? ((strip["surface"] ?? []) as Surface[]);
  const lanes = facts.lanes ?? Number(strip["lanes"] ?? 1);
  const length = facts.length_metres ?? Number(strip["lane_length_metres"] ?? 15);
  return (
    <details>
      <summary>{say("tonight.ground")}</summary>
      <div class="inside">
        <div class="row" role="group" aria-label={say("tonight.ground")}>
          {kSurfaces.map((each) => (
            <Toggle
              key={each}
              label={say(`tonight.${each}`)}
              on={surface.includes(each)}
              onChange={(on) => change(pitch, { surface: put(surface, each, on) })}
            />
          ))}
        </div>
        <Stepper label={say("tonight.lanes")} value={lanes} least={1} most={12} onChange={(value) => change(pitch, { lanes: value })} />
        <Stepper label={say("tonight.length")} value={length} least={5} most={60} onChange={(value) => change(pitch, { length_metres: value })} />
      </div>
    </details>
  );
}

export function Missing({ pitch }: { pitch: Pitch }) {
  const { missing } = pitch.evening.value.facts;
  return (
    <details>
      <summary>{say("tonight.missing")}</summary>
      <div class="inside row" role="group" aria-label={say("tonight.missing")}>
        {kKit.map((each) => (
          <Toggle
            key={each}
            label={say(`tonight.${each}`)}
            on={missing.includes(each)}
            onChange={(on) => change(pitch, { missing: put(missing, each, on) })}
          />
        ))}
      </div>
    </details>
  );
}

export function WhoIsHere({ pitch }: { pitch: Pitch }) {
  const { away } = pitch.evening.value.facts;
  const tick = (player: string, here: boolean) => {
    // Names tell how many; a number that was counted before gives way.
    change(pitch, { away: put(away, player, !here), named: true, turnout: undefined });
  };
  return (
    <details>
      <summary>{say("tonight.who")}</summary>
      <div class="inside ticks">
        {pitch.pack.roster.map(({ player }) => (
          <Tick key={player} label={whoIs(pitch, player)} on={!away.includes(player)} onChange={(here) => tick(player, here)} />
        ))}
      </div>
    </details>
  );
}

function soreOf(said: string): { points: number; place?: string } {
  const { before, place } = JSON.parse(said) as { before: number; place?: string };
  return place ? { points: before, place } : { points: before };
}

export function SoreNote({ pitch }: { pitch: Pitch }) {
  const [player, setPlayer] = useState("");
  const [points, setPoints] = useState(3);
  const [place, setPlace] = useState<Place | "">("");
  const part = (each: { points: number; place?: string }) => {
    const word = takesPart({ player: "", ...each });
    return word === "joins in" ? say("sore.joins_in") : word === "swaps" ? say("sore.swaps") : say("sore.sits_out");
  };
  const asked = place ? { points, place } : { points };
  const note = () => {
    pitch.happen({ event: "sore", sore: { player, ...asked } });
    setPlayer("");
    setPlace("");
    setPoints(3);
  };
  return (
    <details>
      <summary>{say("tonight.sore")}</summary>
      <div class="inside">
        <Noted pitch={pitch} kind="soreness" words={({ said }) => part(soreOf(said))} />
        <p>{say("sore.who")}</p>
        <WhoPicker pitch={pitch} label={say("sore.who")} player={player} onPick={setPlayer} />
        {player && (
          <>
            <Stepper label={say("sore.how")} value={points} least={0} most={10} onChange={setPoints} />
            <p>{say("sore.where")}</p>
            <PlacePicker label={say("sore.where")} place={place} onPick={setPlace} />
            <p aria-live="polite">
              <strong>{part(asked)}</strong>
            </p>
            <button type="button" onClick={note}>
              {say("sore.note")}
            </button>
          </>
        )}
      </div>
    </details>
  );
}
