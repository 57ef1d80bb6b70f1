// The address by which a coach's calendar follows the squad's evenings: made and shown once, told of, made anew and taken
// back. The server keeps its digest only, so nobody can be shown it again.
import { useState } from "preact/hooks";
import { list, moment, wholeDay } from "../../shared/words/words.ts";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { named } from "../shell/parts.tsx";
import { Qr } from "../shell/qr.tsx";
import { Sure } from "../shell/sure.tsx";
import { ToCopy } from "../shell/to_copy.tsx";
import { many, say } from "./words.ts";

export type CalendarLink = Said<"calendar-links">["links"][number];

const nameOf = (name: string): string => named(name, say("calendar.somebody"));

// The squad's latest, which the server tells first; its others were taken back before it.
export const latestOf = (links: CalendarLink[], squad: string): CalendarLink | undefined => links.find((one) => one.squad === squad);

export function standingWords(link: CalendarLink | undefined): string {
  if (!link) return say("calendar.none");
  if (link.state === "taken-back") return say("calendar.taken_back", { when: moment(link.taken_back!), by: nameOf(link.taken_back_by!) });
  const made = { made: moment(link.made), by: nameOf(link.made_by), until: moment(link.until) };
  if (link.state === "too-late") return say("calendar.too_late", made);
  const asked = link.asked === undefined ? say("calendar.never") : say("calendar.asked", { day: wholeDay(link.asked) });
  return `${say("calendar.open", made)} ${asked}`;
}

// A calendar's own scheme, by which a phone offers to follow it and not to copy it once.
export const calendarScheme = (link: string): string => link.replace(/^https?:/, "webcal:");

function Made({ link, onClose }: { link: string; onClose: () => void }) {
  return (
    <Dialog title={say("calendar.made_title")} onClose={onClose} wide>
      <p>{say("calendar.made_what")}</p>
      <div class="beside-picture">
        <div>
          <ToCopy label={say("calendar.link")} text={link} rows={3} />
          <ToCopy label={say("calendar.message")} text={say("calendar.letter", { link })} rows={7} />
        </div>
        <figure>
          <Qr text={calendarScheme(link)} label={say("calendar.picture")} />
          <figcaption class="soft">{say("calendar.picture_what")}</figcaption>
        </figure>
      </div>
    </Dialog>
  );
}

type Asks = "anew" | "take_back";

export function CalendarLinkPart({ squad, name }: { squad: string; name: string }) {
  const links = useAsked("calendar-links", {});
  const [sure, setSure] = useState<Asks | undefined>();
  const [made, setMade] = useState<string | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const make = async () => {
    const answer = await ask("make-calendar-link", { squad }, {});
    if (!answer.ok) return answer;
    setMade(`${location.origin}${answer.said.path}`);
    await links.again();
    return undefined;
  };
  const takeBack = async () => {
    const answer = await ask("take-back-calendar-link", { squad }, {});
    if (!answer.ok) return answer;
    announce(say("calendar.is_back", { name }));
    await links.again();
    return undefined;
  };
  return (
    <section aria-labelledby="calendar-link" class="calendar-link not-on-paper">
      <h2 id="calendar-link">{say("calendar.title")}</h2>
      <p class="soft">{say("calendar.what")}</p>
      <Of asked={links} height="field">
        {(said) => {
          const link = latestOf(said.links, squad);
          const stands = link !== undefined && link.state !== "taken-back";
          return (
            <>
              <p>{standingWords(link)}</p>
              {link?.left?.length ? <p class="act-now">{many("calendar_left", link.left.length, { names: list(link.left.map(nameOf)) })}</p> : null}
              <p class="row">
                <button type="button" onClick={() => (stands ? setSure("anew") : void make().then(setRefused))}>
                  {say(stands ? "calendar.anew" : "calendar.make")}
                </button>
                {stands ? (
                  <button type="button" onClick={() => setSure("take_back")}>
                    {say("calendar.take_back")}
                  </button>
                ) : null}
              </p>
            </>
          );
        }}
      </Of>
      {refused ? <Refused refusal={refused} /> : null}
      {sure ? (
        <Sure title={say(`calendar.sure.${sure}`)} button={say(`calendar.${sure}`)} act={sure === "anew" ? make : takeBack} onClose={() => setSure(undefined)}>
          <p>{say(`calendar.follows.${sure}`)}</p>
        </Sure>
      ) : null}
      {made === undefined || sure ? null : <Made link={made} onClose={() => setMade(undefined)} />}
    </section>
  );
}
