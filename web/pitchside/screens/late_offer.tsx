// When the run will be over late: a shorter rest is offered, planned by the door, and never taken unasked.
import { useState } from "preact/hooks";
import { millisecondsInItem, secondsLate, secondsLeft } from "../evening/where.ts";
import { many, say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";

const kWorthSaying = 45; // seconds late before anything is said
const kAgainAfter = 120; // and how much later before it is said again

export function LateOffer({ pitch, now }: { pitch: Pitch; now: number }) {
  const [left, setLeft] = useState(0); // what the coach last let be, in seconds late
  const [working, setWorking] = useState(false);
  const [said, setSaid] = useState("");
  const [none, setNone] = useState(false); // nothing fits any more
  const state = pitch.evening.value;
  const { run, plan } = state;
  if (!run || !plan) return null;
  const late = secondsLate(state, now);
  const worth = late > kWorthSaying && late > left + (left > 0 ? kAgainAfter : 0) && run.item + 1 < plan.items.length;
  if (!worth) return <p aria-live="polite" class="soft">{said}</p>;
  const shorten = async () => {
    setWorking(true);
    const current = plan.items[run.item];
    const still = Math.max(0, (current?.takes_seconds ?? 0) - millisecondsInItem(run, Date.now()) / 1000);
    const rest = await pitch.planRest(secondsLeft(run, Date.now() + still * 1000));
    setWorking(false);
    if (rest.items.length === 0) return setNone(true);
    setLeft(late);
    pitch.happen({ event: "rest-planned", items: rest.items });
    const over = new Date(Date.now() + (still + rest.seconds) * 1000);
    const finish = `${String(over.getHours()).padStart(2, "0")}:${String(over.getMinutes()).padStart(2, "0")}`;
    setSaid(say("run.shortened", { finish }));
  };
  return (
    <div class="offer" role="status">
      <p>
        <strong>{say("run.late", { minutes: many("minutes", Math.ceil(late / 60)) })}</strong> {none && say("run.none_fits")}
      </p>
      <div class="row">
        {none ? (
          <button type="button" onClick={() => pitch.happen({ event: "go", screen: "wrap-up" })}>
            {say("run.finish_early")}
          </button>
        ) : (
          <button type="button" disabled={working} onClick={shorten}>
            {working ? say("say.working") : say("run.shorter")}
          </button>
        )}
        <button type="button" onClick={() => setLeft(late)}>
          {say("run.as_it_is")}
        </button>
      </div>
    </div>
  );
}
