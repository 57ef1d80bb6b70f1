// One release, as it was given out: what it says in short, is it done, is it done well, injuries, and what a page like this
// can and cannot say. What is asked of the board, in the lead's words, is part of it.
import { useEffect } from "preact/hooks";
import type { Release } from "../../shared/api.ts";
import { moment, number, wholeDay } from "../../shared/words/words.ts";
import { paperFoot } from "../shell/paper_foot.ts";
import { AskedOfBoard } from "./asked_of_board.tsx";
import { remarkWords } from "./key_words.ts";
import { DoneSections, percentOf, toldOf, tookPlace, untoldWords } from "./release_done.tsx";
import { InjuriesSection, rateWords } from "./release_injuries.tsx";
import { many, say } from "./words.ts";

interface PageProps {
  release: Release;
  drawn?: boolean; // looked at, and not given out
}

export function ReleasePage({ release, drawn = false }: PageProps) {
  const period = say("from_until", { from: wholeDay(release.from), until: wholeDay(release.until) });
  const stands = drawn ? say("drawn") : say("stands", { when: moment(release.made) });
  const foot = [release.club, period, drawn ? stands : say("given_out", { when: moment(release.made) })].join(" · ");
  useEffect(() => paperFoot(foot, say("page")), [foot]);
  return (
    <article class="release">
      <h2>
        <bdi>{release.club}</bdi>, {period}
      </h2>
      <p class="soft">{stands}</p>
      <InShort release={release} />
      {drawn ? null : <AskedOfBoard asked={release.asked} />}
      <DoneSections sessions={release.sessions} />
      <InjuriesSection release={release} />
      <CanSay release={release} />
    </article>
  );
}

// For who reads no further: one sentence for each question, and how far it can be trusted.
function InShort({ release: { sessions, injuries } }: { release: Release }) {
  const { all } = sessions;
  const told = toldOf(all);
  const rate = injuries.silent ? undefined : injuries.per_1000_hours;
  return (
    <section class="in-short" aria-labelledby="in-short">
      <h3 id="in-short">{say("short.title")}</h3>
      <ul>
        <li>{told === 0 ? say("done.nothing") : say("short.done", { told: number(told), took_place: number(tookPlace(all)), percent: percentOf(tookPlace(all), told) })}</li>
        {untoldWords(all) === undefined ? null : <li>{untoldWords(all)}</li>}
        {told === 0 ? null : <li>{say("short.well", { most: number(all.most), told: number(told), percent: percentOf(all.most, told) })}</li>}
        <li>{injuries.silent ? say("injuries.silent") : `${many("injuries", injuries.all ?? 0)} ${rate ? rateWords(rate) : say("injuries.no_rate")}`}</li>
        <li>{say("short.works")}</li>
      </ul>
    </section>
  );
}

function CanSay({ release }: { release: Release }) {
  const { injuries, remarks } = release;
  const rated = injuries.silent ? undefined : injuries.per_1000_hours;
  const compared = injuries.silent ? undefined : injuries.compared;
  const counted = release.sessions.all.planned !== undefined;
  const lines = [counted ? "told_of_planned" : "told", "well", ...(injuries.silent ? [] : (["injuries"] as const)), ...(rated ? (["rate", "limits"] as const) : []), compared ? "compared" : "works", "hidden", "cost"] as const;
  return (
    <section class="can-say">
      <h3>{say("can_say.title")}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{say(`can_say.${line}`)}</li>
        ))}
        {remarks.map((line) => (
          <li key={line} {...(remarkWords(line) ? {} : { lang: "en" })}>
            {remarkWords(line) ?? line}
          </li>
        ))}
      </ul>
    </section>
  );
}
