// Someone is hurt: stop, look for danger signs, call, get help; the note comes last. It never says what it is.
import { useState } from "preact/hooks";
import type { Place } from "../evening/sore.ts";
import { eveningOf } from "../evening/request.ts";
import type { Venue } from "../package/evening_package.ts";
import { lines, say, type Key } from "../words/words.ts";
import { CloseButton, Head } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";
import { PlacePicker, WhoPicker } from "./who.tsx";

export function Signs({ title, signs }: { title: string; signs: string[] }) {
  return (
    <>
      <h2>{title}</h2>
      <ul>
        {signs.map((sign) => (
          <li key={sign}>{sign}</li>
        ))}
      </ul>
    </>
  );
}

function venueOf(pitch: Pitch): Venue | undefined {
  const strip = eveningOf(pitch.pack, pitch.evening.value)?.strip;
  return pitch.pack.action_plans.find((each) => each.strip === strip)?.venue;
}

// What is known of the place, in the order in which it is needed.
function linesOf(venue: Venue): [Key, string | undefined][] {
  return [
    ["hurt.at.address", venue.address],
    ["hurt.at.map", venue.map],
    ["hurt.at.way_in", venue.way_in],
    ["hurt.at.phone", venue.phone_with_signal],
    ["hurt.at.defibrillator", venue.defibrillator],
    ["hurt.at.first_aid_bag", venue.first_aid_bag],
    ["hurt.at.stays", venue.roles?.stays_with_player],
    ["hurt.at.calls", venue.roles?.calls],
    ["hurt.at.meets", venue.roles?.meets_ambulance],
    ["hurt.at.minds", venue.roles?.minds_others],
  ];
}

export function ActionPlanLines({ venue }: { venue: Venue | undefined }) {
  if (!venue) return <p>{say("hurt.no_plan")}</p>;
  return (
    <dl class="venue">
      {linesOf(venue).map(([key, value]) =>
        value === undefined ? null : (
          <div key={key}>
            <dt>{say(key)}</dt>
            <dd>{value}</dd>
          </div>
        ),
      )}
    </dl>
  );
}

export function CallButton({ number }: { number: string | undefined }) {
  if (number === undefined) return <p class="large">{say("hurt.call_local")}</p>;
  return (
    <a class="button act now" href={`tel:${number.replace(/[^0-9+*#]/g, "")}`}>
      {say("hurt.call", { number })}
    </a>
  );
}

interface NoteProps {
  pitch: Pitch;
  player: string;
  place: Place | "";
  noted: boolean;
  onPlayer(player: string): void;
  onPlace(place: Place | ""): void;
}

function Note({ pitch, player, place, noted, onPlayer, onPlace }: NoteProps) {
  return (
    <section>
      <h2>{say("hurt.note")}</h2>
      <p role="status">{noted && <strong>{say("hurt.noted")}</strong>}</p>
      <p>{say("hurt.who")}</p>
      <WhoPicker pitch={pitch} label={say("hurt.who")} player={player} onPick={onPlayer} />
      {player && (
        <>
          <p>{say("hurt.where")}</p>
          <PlacePicker label={say("hurt.where")} place={place} onPick={onPlace} />
        </>
      )}
    </section>
  );
}

export function HurtScreen({ pitch }: { pitch: Pitch }) {
  const venue = venueOf(pitch);
  const [player, setPlayer] = useState("");
  const [place, setPlace] = useState<Place | "">("");
  const [noted, setNoted] = useState(false);
  const pick = (picked: string) => {
    setPlayer(picked);
    setPlace("");
    setNoted(false);
  };
  const write = () => {
    pitch.happen(place ? { event: "hurt", player, place } : { event: "hurt", player });
    pick("");
    setNoted(true);
  };
  return (
    <>
      <Head title={say("hurt.title")}>
        <CloseButton pitch={pitch} />
      </Head>
      <main>
        <p class="large">
          <strong>{say("hurt.stop")}</strong> {say("hurt.doubt")}
        </p>
        <Signs title={say("hurt.call_if")} signs={lines("hurt.call_signs")} />
        <CallButton number={venue?.emergency_number} />
        <h2>{say("hurt.plan")}</h2>
        <ActionPlanLines venue={venue} />
        <Signs title={say("hurt.clinician_if")} signs={lines("hurt.clinician_signs")} />
        <Note pitch={pitch} player={player} place={place} noted={noted} onPlayer={pick} onPlace={setPlace} />
        <p class="soft">{say("say.local_rules")}</p>
      </main>
      <footer class="bar">
        {player ? (
          <button type="button" class="main" onClick={write}>
            {say("hurt.write")}
          </button>
        ) : (
          <button type="button" class="main" onClick={() => (pitch.overlay.value = "none")}>
            {say("hurt.return")}
          </button>
        )}
      </footer>
    </>
  );
}
