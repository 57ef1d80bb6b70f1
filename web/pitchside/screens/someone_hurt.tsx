// Someone is hurt: stop, look for danger signs, call, get help; the note comes last. It never says what it is.
import { useRef, useState } from "preact/hooks";
import type { Place } from "../evening/sore.ts";
import { lines, say } from "../words/words.ts";
import { EmergencySheets } from "./emergency_sheet.tsx";
import { Noted } from "./noted.tsx";
import { CloseButton, Head } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";
import { ActionPlanLines, CallButton, venueOf } from "./venue.tsx";
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
      <Noted pitch={pitch} kind="hurt" words={() => say("hurt.sits_out")} />
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
  const note = useRef<HTMLDivElement>(null);
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
        <CallButton number={venue?.emergency_number} />
        <Signs title={say("hurt.call_if")} signs={lines("hurt.call_signs")} />
        <EmergencySheets pitch={pitch} />
        <h2>{say("hurt.plan")}</h2>
        <ActionPlanLines venue={venue} />
        <Signs title={say("hurt.clinician_if")} signs={lines("hurt.clinician_signs")} />
        <div ref={note}>
          <Note pitch={pitch} player={player} place={place} noted={noted} onPlayer={pick} onPlace={setPlace} />
        </div>
        <p class="soft">{say("say.local_rules")}</p>
      </main>
      <footer class="bar together">
        {player ? (
          <button type="button" class="main" onClick={write}>
            {say("hurt.write")}
          </button>
        ) : (
          <>
            <button type="button" onClick={() => note.current?.scrollIntoView()}>
              {say("hurt.to_note")}
            </button>
            <button type="button" class="main" onClick={() => (pitch.overlay.value = "none")}>
              {say("hurt.return")}
            </button>
          </>
        )}
      </footer>
    </>
  );
}
