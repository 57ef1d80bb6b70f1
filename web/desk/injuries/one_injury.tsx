// One injury: what is known of it, putting it right, the return; and what holds its player back meanwhile.
import { useState } from "preact/hooks";
import { wholeDay } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { enter, newEntry } from "../api/enter.ts";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { named, Written } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { Sure } from "../shell/sure.tsx";
import { undo } from "../shell/undo.ts";
import { DayDialog } from "./day_dialog.tsx";
import { HoldsBack } from "./holds_back.tsx";
import { HowFields } from "./how_fields.tsx";
import { type Injury, isOpen } from "./injury.ts";
import { IncidentDialog } from "./incident_dialog.tsx";
import { InjuryForm } from "./injury_form.tsx";
import { enterWithUndo } from "./take_back.ts";
import { kTermFields, type Terms, termsOf, termWords, whatOf, injuryWords } from "./terms.ts";
import { many, say } from "./words.ts";
import { WayBack } from "./way_back.tsx";

interface OneProps {
  injury: Injury;
  today: string;
  again: () => Promise<unknown>;
}

function Known({ injury }: { injury: Injury }) {
  const terms = termsOf(injury.what);
  const rows = kTermFields.filter((field) => terms[field] && field !== "region" && field !== "side" && field !== "tissue");
  return (
    <dl class="pairs">
      <div>
        <dt>{say("list.day")}</dt>
        <dd>{wholeDay(injury.day)}</dd>
      </div>
      <div>
        <dt>{say("list.lost")}</dt>
        <dd>{many(isOpen(injury) ? "days_so_far" : "days", injury.days_lost ?? 0)}</dd>
      </div>
      {injury.loss_began ? (
        <div>
          <dt>{say("one.loss_began")}</dt>
          <dd>{wholeDay(injury.loss_began)}</dd>
        </div>
      ) : null}
      {injury.returned ? (
        <div>
          <dt>{say("list.returned")}</dt>
          <dd>{wholeDay(injury.returned)}</dd>
        </div>
      ) : null}
      {rows.map((field) => (
        <div key={field}>
          <dt>{say(`ask.${field}`)}</dt>
          <dd>{termWords(field, terms[field] ?? "")}</dd>
        </div>
      ))}
    </dl>
  );
}

// More became known: an entry of its own, which another takes back.
function MoreKnown({ injury, again, onClose }: Omit<OneProps, "today"> & { onClose: () => void }) {
  const [terms, setTerms] = useState<Terms>(termsOf(injury.what));
  return (
    <DayDialog
      title={say("one.more_known")}
      day_words={say("one.loss_began")}
      day={injury.loss_began ?? ""}
      optional
      least={injury.day}
      button={say("one.enter_more")}
      onClose={onClose}
      act={async (day) => {
        const about = { player: injury.player, injury: injury.injury };
        const update = newEntry("injury-updated", { ...about, what: whatOf(terms), ...(day ? { loss_began: day } : {}) });
        const why = await enter([update]);
        if (why) return why;
        await again();
        const back = { ...about, what: injury.what, corrects: update.id, ...(injury.loss_began ? { loss_began: injury.loss_began } : {}) };
        undo.offer({
          words: say("told.updated"),
          undo: async () => {
            const not = await enter([newEntry("injury-updated", back)]);
            announce(not ? not.words : say("told.undone"));
            await again();
          },
        });
        return undefined;
      }}
    >
      <HowFields terms={terms} change={setTerms} />
    </DayDialog>
  );
}

export function OneInjury({ injury, today, again }: OneProps) {
  const timeline = useAsked("timeline", { player: injury.player });
  const [shows, setShows] = useState<"" | "more" | "right" | "back" | "incident" | "never">("");
  const [refused, setRefused] = useState<Refusal | undefined>();
  const close = () => setShows("");
  // The list says when to look again at what holds the player back.
  const heldChanged = () => Promise.all([timeline.again(), again()]);
  const about = { player: injury.player, injury: injury.injury };
  const reopened = () => newEntry("injury-reopened", about);
  const closeInjury = (returned: string) => enterWithUndo(newEntry("injury-closed", { ...about, returned }), say("told.closed"), again, reopened());
  const notBack = async () => {
    const { returned = "" } = injury;
    setRefused(await enterWithUndo(reopened(), say("told.not_back"), again, newEntry("injury-closed", { ...about, returned })));
  };
  const neverWas = async () => {
    const why = await enterWithUndo(newEntry("injury-never-was", about), say("told.never_was"), again, reopened());
    if (!why) go(hashOf("injuries"));
    return why;
  };
  return (
    <>
      <section aria-labelledby="one">
        <h2 id="one">{injuryWords(injury.what)}</h2>
        <p>
          <span class="soft">{injury.player}</span>{" "}
          <a href={hashOf("people", injury.player)}>
            <bdi>{named(timeline.said?.name ?? injury.player, injury.player)}</bdi>
          </a>
        </p>
        <Known injury={injury} />
        {injury.note ? (
          <p>
            {say("one.note")} <Written text={injury.note} />
          </p>
        ) : null}
        <p class="row not-on-paper">
          {isOpen(injury) ? (
            <button type="button" onClick={() => setShows("more")}>
              {say("one.more_known")}
            </button>
          ) : null}
          <button type="button" onClick={() => setShows("right")}>
            {say("one.put_right")}
          </button>
          <button type="button" onClick={() => setShows("back")}>
            {say(isOpen(injury) ? "one.back_in_full" : "one.other_day")}
          </button>
          {isOpen(injury) ? null : (
            <button type="button" onClick={() => void notBack()}>
              {say("one.not_back")}
            </button>
          )}
          <button type="button" onClick={() => setShows("incident")}>
            {say("incident.open")}
          </button>
          <button type="button" onClick={() => setShows("never")}>
            {say("one.never_was")}
          </button>
        </p>
        {refused ? <Refused refusal={refused} /> : null}
      </section>
      <Of asked={timeline}>
        {(said) => (
          <>
            <HoldsBack timeline={said} squad={injury.squad} today={today} again={heldChanged} />
            <WayBack timeline={said} again={heldChanged} />
          </>
        )}
      </Of>
      {shows === "more" ? <MoreKnown injury={injury} again={again} onClose={close} /> : null}
      {shows === "right" ? (
        <Dialog title={say("one.put_right")} wide onClose={close}>
          <p>{say("one.put_right_what")}</p>
          <InjuryForm
            today={today}
            before={injury}
            entered={() => {
              close();
              announce(say("told.put_right"));
              void again();
            }}
          />
        </Dialog>
      ) : null}
      {shows === "incident" ? <IncidentDialog injury={injury} today={today} onClose={close} /> : null}
      {shows === "never" ? (
        <Sure title={say("one.never_was_sure")} button={say("one.never_was_do")} act={neverWas} onClose={close}>
          <p>{say("one.never_was_what")}</p>
        </Sure>
      ) : null}
      {shows === "back" ? (
        <DayDialog title={say(isOpen(injury) ? "one.back_in_full" : "one.other_day")} day_words={say("list.returned")} day={injury.returned ?? today} least={injury.day} most={today} button={say("one.enter_back")} act={closeInjury} onClose={close}>
          <p>{say("one.back_what")}</p>
          <p>{say("one.back_stays")}</p>
        </DayDialog>
      ) : null}
    </>
  );
}
