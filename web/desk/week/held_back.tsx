// Squads in which somebody is held back today: counts, and the two ways on, who it is (which is noted) and the injuries. What
// came in within the last week stands first and says so; then where somebody sits out; swaps alone stand folded.
import { list, weekday } from "../../shared/words/words.ts";
import { hashOf } from "../shell/route.ts";
import type { OfSquads } from "./week_table.ts";
import { many, say } from "./words.ts";

type Squad = OfSquads["squads"][number];

const kAtOnce = 6; // squads; the rest stand folded

const isNew = ({ tonight }: Squad): number => (tonight.reported ? 1 : 0);

// 'New: 1 was hurt, 1 is sore, last on Thursday.'
function newWords({ hurt, sore, latest }: NonNullable<Squad["tonight"]["reported"]>): string {
  const told = [...(hurt > 0 ? [many("new_hurt", hurt)] : []), ...(sore > 0 ? [many("new_sore", sore)] : [])];
  return say("held.new", { told: list(told), day: weekday(latest) });
}

function HeldRow({ squad: { name, tonight }, look }: { squad: Squad; look: () => void }) {
  const told = [...(tonight.sits_out > 0 ? [many("sits_out", tonight.sits_out)] : []), ...(tonight.with_swaps > 0 ? [many("with_swaps", tonight.with_swaps)] : [])];
  return (
    <li class="review">
      <h4>{name}</h4>
      <p>
        {told.length > 0 && `${told.join(", ")}.`} {tonight.reported && <strong>{newWords(tonight.reported)}</strong>}
      </p>
      <button type="button" class="quiet" aria-label={say("held.about", { squad: name })} onClick={look}>
        {say("held.look")}
      </button>
    </li>
  );
}

export function HeldBack({ squads, look }: { squads: Squad[]; look: (squad: string) => void }) {
  const held = squads.filter((squad) => squad.tonight.sits_out + squad.tonight.with_swaps + isNew(squad) > 0);
  const by_weight = [...held].sort((one, other) => isNew(other) - isNew(one) || other.tonight.sits_out - one.tonight.sits_out || other.tonight.with_swaps - one.tonight.with_swaps);
  const out = by_weight.filter((squad) => squad.tonight.sits_out > 0 || isNew(squad) > 0);
  const shown = out.length > 0 ? Math.min(out.length, kAtOnce) : Math.min(by_weight.length, kAtOnce);
  const rows = (some: Squad[]) => some.map((squad) => <HeldRow key={squad.squad} squad={squad} look={() => look(squad.squad)} />);
  return (
    <section aria-labelledby="held-back">
      <h3 id="held-back">{say("held.title")}</h3>
      {held.length === 0 ? (
        <p>{say("held.none")}</p>
      ) : (
        <>
          <p class="soft">{say("held.what")}</p>
          <ul class="cards">{rows(by_weight.slice(0, shown))}</ul>
          {by_weight.length > shown && (
            <details class="more-held">
              <summary class="not-on-paper">{many("more_held", by_weight.length - shown)}</summary>
              <ul class="cards">{rows(by_weight.slice(shown))}</ul>
            </details>
          )}
          <p class="row not-on-paper">
            <a href={hashOf("injuries")}>{say("held.injuries")}</a>
          </p>
        </>
      )}
    </section>
  );
}
