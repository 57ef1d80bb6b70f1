// 'Someone is hurt' without the code: the danger signs, whom to call, where to go. Nobody's name; the note is written
// once the app is open.
import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { dayOf } from "../evening/day.ts";
import type { Keep } from "../keep/keep.ts";
import type { Safety } from "../keep/safety.ts";
import type { Venue } from "../package/evening_package.ts";
import { Signs } from "../screens/someone_hurt.tsx";
import { ActionPlanLines, CallButton } from "../screens/venue.tsx";
import { lines, say } from "../words/words.ts";
import type { LockWords } from "./keeping_words.ts";

// Of the places where the phone trains today; of all that it knows where it trains nowhere today. The screen says which.
export function venuesOn(day: string, safety: Safety[]): Venue[] {
  const plans = safety.flatMap((one) => one.action_plans.map((plan) => ({ plan, today: one.evenings.some((evening) => evening.day === day && evening.strip === plan.strip) })));
  const today = plans.filter((one) => one.today);
  const byText = new Map((today.length > 0 ? today : plans).map(({ plan }) => [JSON.stringify(plan.venue), plan.venue]));
  return [...byText.values()];
}

function Place({ venue }: { venue: Venue }): JSX.Element {
  return (
    <section>
      <h2>{venue.name}</h2>
      <CallButton number={venue.emergency_number} />
      <ActionPlanLines venue={venue} />
    </section>
  );
}

export function LockedHurt({ keep, words, onReturn }: { keep: Keep; words: LockWords; onReturn: () => void }): JSX.Element {
  const venues = useSignal<Venue[]>([]);
  useEffect(() => {
    void keep.safety().then((safety) => (venues.value = venuesOn(dayOf(new Date()), safety)));
    document.querySelector<HTMLElement>("h1")?.focus();
  }, [keep]);
  return (
    <div class="pitchside" data-theme="sun">
      <header class="head">
        <h1 tabIndex={-1}>{say("hurt.title")}</h1>
        <button type="button" onClick={onReturn}>
          {say("say.close")}
        </button>
      </header>
      <main>
        <p class="large">
          <strong>{say("hurt.stop")}</strong> {say("hurt.doubt")}
        </p>
        <Signs title={say("hurt.call_if")} signs={lines("hurt.call_signs")} />
        {venues.value.length === 0 ? <CallButton number={undefined} /> : null}
        {venues.value.map((venue) => (
          <Place key={venue.name} venue={venue} />
        ))}
        <Signs title={say("hurt.clinician_if")} signs={lines("hurt.clinician_signs")} />
        <p>{words.hurt_then}</p>
        <p class="soft">{say("say.local_rules")}</p>
      </main>
    </div>
  );
}
