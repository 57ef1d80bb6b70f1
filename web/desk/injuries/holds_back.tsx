// What holds the player back: the server's word with its reasons, and below it the entries that can be looked at again,
// answered by a clinician, or lifted by the lead.
import { useState } from "preact/hooks";
import { list, moment, wholeDay } from "../../shared/words/words.ts";
import type { Said } from "../api/answer.ts";
import { useAsked } from "../api/asked.tsx";
import { newEntry } from "../api/enter.ts";
import { Written } from "../shell/parts.tsx";
import { ClinicianDialog } from "./clinician_dialog.tsx";
import { DayDialog } from "./day_dialog.tsx";
import { type Held, heldOf, isOfAnEntry } from "./holding.ts";
import { RestrictionDialog } from "./restriction_dialog.tsx";
import { enterForGood, enterWithUndo } from "./take_back.ts";
import { placeWords, say } from "./words.ts";

type Timeline = Said<"timeline">;

interface HoldsProps {
  timeline: Timeline;
  squad: string;
  today: string;
  again: () => Promise<unknown>;
}

function heldWords({ kind, places }: Held): string {
  return places.length > 0 ? say("held.at", { what: say(`held.${kind}`), place: list(places.map(placeWords)) }) : say(`held.${kind}`);
}

function Row({ held, player, today, again }: { held: Held; player: string; today: string; again: () => Promise<unknown> }) {
  const [shows, setShows] = useState<"" | "cleared" | "review" | "lift">("");
  const about = { player, names: [held.id] };
  const close = () => setShows("");
  const enterReview = (review: string) => {
    const entry = newEntry("reviewed", { ...about, review });
    return held.review ? enterWithUndo(entry, say("told.reviewed"), again, newEntry("reviewed", { ...about, review: held.review })) : enterForGood(entry, say("told.reviewed"), again);
  };
  const named_words = heldWords(held);
  const button = (key: "cleared" | "review" | "lift") => (
    <button type="button" aria-label={`${say(`held.${key}`)}: ${named_words}`} onClick={() => setShows(key)}>
      {say(`held.${key}`)}
    </button>
  );
  return (
    <li>
      <strong>{named_words}</strong> <span class="soft">{moment(held.received)}</span>
      {held.instruction ? (
        <p>
          <Written text={held.instruction} />
        </p>
      ) : null}
      <p>
        {held.until ? `${say("held.until", { day: wholeDay(held.until) })} ` : ""}
        {held.review ? say("held.look_on", { day: wholeDay(held.review) }) : ""}
        {held.kind === "restriction" ? "" : held.cleared_by ? say("held.cleared_by", { who: `\u2068${held.cleared_by}\u2069` }) : say("held.waits")}
      </p>
      <p class="row not-on-paper">
        {held.kind === "restriction" ? button("review") : button("cleared")}
        {button("lift")}
      </p>
      {shows === "cleared" ? (
        <ClinicianDialog title={say("held.cleared")} what={named_words} onClose={close} act={(who) => enterWithUndo(newEntry("clearance", { ...about, ...who }), say("told.cleared"), again)} />
      ) : null}
      {shows === "review" ? (
        <DayDialog title={say("held.review")} day_words={say("held.next_look")} day={held.review || today} least={today} button={say("held.enter_review")} onClose={close} act={enterReview} />
      ) : null}
      {shows === "lift" ? (
        <DayDialog title={say("held.lift")} button={say("held.lift")} onClose={close} act={() => enterWithUndo(newEntry("lifted", about), say("told.lifted"), again)}>
          <p>{named_words}</p>
          <p>{say(held.kind === "restriction" ? "held.lift_what" : "held.lift_hurt")}</p>
        </DayDialog>
      ) : null}
    </li>
  );
}

export function HoldsBack({ timeline, squad, today, again }: HoldsProps) {
  const [restricts, setRestricts] = useState(false);
  const tonight = useAsked("squad", { squad });
  const refresh = async () => {
    await again();
    await tonight.again();
  };
  const own = tonight.said?.standing.find(({ player }) => player === timeline.player);
  const held = heldOf(timeline.entries);
  // Those of an entry stand below by that entry, in the language shown.
  const others = own?.reasons?.filter((reason) => !isOfAnEntry(reason)) ?? [];
  return (
    <section class="sheet" aria-labelledby="holds">
      <h2 id="holds">{say("held.title")}</h2>
      <p>
        <strong>{say(`word.${timeline.word}`)}</strong>
      </p>
      {others.length > 0 ? (
        <ul lang="en" class="reasons">
          {others.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      ) : null}
      {held.length === 0 ? (
        <p>{say("held.nothing")}</p>
      ) : (
        <ul class="cards">
          {held.map((one) => (
            <Row key={one.id} held={one} player={timeline.player} today={today} again={refresh} />
          ))}
        </ul>
      )}
      <p class="not-on-paper">
        <button type="button" onClick={() => setRestricts(true)}>
          {say("held.restrict")}
        </button>
      </p>
      <p class="soft">{say("held.stays")}</p>
      {restricts ? <RestrictionDialog player={timeline.player} today={today} again={refresh} onClose={() => setRestricts(false)} /> : null}
    </section>
  );
}
