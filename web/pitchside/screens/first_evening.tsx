// A coach's first evening: five short pages, with what the two-page pack on paper says (docs/formats/handouts.md). It can
// be left at any page and read again from the settings.
import { useState } from "preact/hooks";
import { keyDrills } from "../evening/key_drills.ts";
import { weightsOf } from "../evening/last_minutes.ts";
import { eveningOf } from "../evening/request.ts";
import { lines, say, type ListKey } from "../words/words.ts";
import { doseWords, drillIn, nameOf, rungWords } from "./drill_words.ts";
import { CloseButton, Head } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";
import { ActionPlanLines, CallButton, venueOf } from "./venue.tsx";

function Sentences({ of }: { of: ListKey }) {
  return (
    <ul class="steps">
      {lines(of).map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function Good({ pitch }: { pitch: Pitch }) {
  const { plan } = pitch.evening.value;
  const note = eveningOf(pitch.pack, pitch.evening.value)?.documents.routine["note"];
  const key = keyDrills(plan?.items ?? [], weightsOf(pitch.pack));
  return (
    <>
      {typeof note === "string" && note !== "" && (
        <p>
          <strong>{say("first.lead_says")}:</strong> {note}
        </p>
      )}
      <p>{key.length > 0 ? say("first.good_note") : say("first.no_plan")}</p>
      {key.map((item) => {
        const drill = drillIn(pitch.pack, item.drill);
        const fault = drill?.watch[0];
        return (
          <section key={item.drill}>
            <h2>{nameOf(pitch.pack, item.drill)}</h2>
            <p class="soft">
              {rungWords(item)}, {doseWords(pitch.pack, item)}
            </p>
            {drill?.how && <p>{drill.how}</p>}
            <ul>
              {drill?.cues.slice(0, 3).map((cue) => (
                <li key={cue}>{cue}</li>
              ))}
            </ul>
            {fault && (
              <p>
                {say("run.watch")}: {say("run.watch_line", { fault: fault.fault, cue: fault.cue })}
              </p>
            )}
          </section>
        );
      })}
    </>
  );
}

function Stop({ pitch }: { pitch: Pitch }) {
  const venue = venueOf(pitch);
  return (
    <>
      <Sentences of="first.stop_lines" />
      <CallButton number={venue?.emergency_number} />
      <ActionPlanLines venue={venue} />
      <p class="soft">{say("first.rules")}</p>
    </>
  );
}

const kPages = ["way", "before", "tell", "good", "stop"] as const;

export function FirstEveningScreen({ pitch }: { pitch: Pitch }) {
  const [at, setAt] = useState(0);
  const page = kPages[at] ?? "way";
  const last = at === kPages.length - 1;
  const to = (next: number) => {
    setAt(next);
    window.scrollTo(0, 0);
  };
  const close = () => {
    pitch.preferences.value = { ...pitch.preferences.value, first_evening: "read" };
    pitch.overlay.value = "none";
  };
  return (
    <>
      <Head title={say("first.title")}>
        <CloseButton pitch={pitch} />
      </Head>
      <main>
        <p class="soft">{say("first.step", { at: at + 1, all: kPages.length })}</p>
        <h2 class="large">{say(`first.${page}`)}</h2>
        {page === "way" && (
          <>
            <Sentences of="first.way_lines" />
            <p>{say("first.no_signal")}</p>
          </>
        )}
        {page === "before" && <Sentences of="first.before_lines" />}
        {page === "tell" && <Sentences of="first.tell_lines" />}
        {page === "good" && <Good pitch={pitch} />}
        {page === "stop" && <Stop pitch={pitch} />}
      </main>
      <footer class="bar together">
        {at > 0 && (
          <button type="button" onClick={() => to(at - 1)}>
            {say("say.back")}
          </button>
        )}
        <button type="button" class="main" onClick={() => (last ? close() : to(at + 1))}>
          {last ? say("first.ready") : say("first.on")}
        </button>
      </footer>
    </>
  );
}

// On Tonight, until somebody has read it or put it away.
export function FirstEveningOffer({ pitch }: { pitch: Pitch }) {
  const preferences = pitch.preferences.value;
  if (preferences.first_evening !== "new") return null;
  return (
    <section class="offer">
      <p>
        <strong>{say("first.offer")}</strong>
      </p>
      <div class="row">
        <button type="button" onClick={() => (pitch.overlay.value = "first-evening")}>
          {say("first.show")}
        </button>
        <button type="button" onClick={() => (pitch.preferences.value = { ...preferences, first_evening: "put-away" })}>
          {say("first.not_now")}
        </button>
      </div>
    </section>
  );
}
