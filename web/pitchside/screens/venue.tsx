// The venue's action plan: whom to call, and what is where.
import { eveningOf } from "../evening/request.ts";
import type { Venue } from "../package/evening_package.ts";
import { say, type Key } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

export function venueOf(pitch: Pitch): Venue | undefined {
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
