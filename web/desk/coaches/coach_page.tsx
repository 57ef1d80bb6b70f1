// One coach, for a talk: what was taught and when, when the lead was there, what help was asked for, and what to bring along.
import type { Account, SquadRow } from "../../shared/api.ts";
import { list, moment, number, wholeDay } from "../../shared/words/words.ts";
import { nameOf } from "../people/charges.ts";
import { named, Written } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { Table } from "../shell/table.tsx";
import { nameOfDrill } from "../squad/drill_names.ts";
import { type Asked, askedOf, type Coach, lessonsOf, visitsOf } from "./coach.ts";
import { DrillLink } from "./drill_link.tsx";
import type { Lesson } from "./lesson_form.tsx";
import { latestOf } from "./survey.ts";
import { SurveyOfOne } from "./survey_told.tsx";
import { say } from "./words.ts";

interface CoachPageProps {
  coach: Coach;
  squads: SquadRow[];
  accounts: Account[];
  teach: (before?: Lesson) => void; // before: a lesson that is put right
  ask: () => void;
}

export function CoachPage({ coach, squads, accounts, teach, ask }: CoachPageProps) {
  const who = (account?: string): string => named(accounts.find((one) => one.account === account)?.name ?? account ?? "", say("somebody"));
  return (
    <>
      <section aria-labelledby="coach">
        <h2 id="coach">
          <bdi>{named(coach.name, say("a_coach"))}</bdi>
        </h2>
        <p>
          {coach.squads.length > 0 ? list(coach.squads.map((id) => nameOf(squads, id))) : say("no_squad")}
          <br />
          <span class="soft">{coach.sent ? say("sent", { when: moment(coach.sent) }) : say("nothing_sent")}</span>
        </p>
        <p class="row not-on-paper">
          <button type="button" class="main" onClick={() => teach()}>
            {say("lesson.open")}
          </button>
          <a href={hashOf("people", undefined, { account: coach.account })}>{say("to_account")}</a>
        </p>
        {coach.squads.length > 0 ? (
          <p class="not-on-paper">
            {say("pack")}{" "}
            {coach.squads.map((id, at) => (
              <span key={id}>
                {at > 0 ? ", " : ""}
                <a href={`/api/squads/${id}/clinic-pack`} target="_blank" rel="noreferrer">
                  {nameOf(squads, id)}
                </a>
              </span>
            ))}
          </p>
        ) : null}
      </section>
      <Lessons coach={coach} who={who} teach={teach} />
      <Visits coach={coach} squads={squads} who={who} />
      <AskedFor asked={askedOf(coach)} />
      <SurveyOfOne asked={latestOf(coach)} ask={ask} />
    </>
  );
}

function Lessons({ coach, who, teach }: { coach: Coach; who: (account?: string) => string; teach: (before: Lesson) => void }) {
  const rows = lessonsOf(coach);
  return (
    <section class="sheet" aria-labelledby="lessons-heard">
      <h2 id="lessons-heard">{say("taught.title")}</h2>
      {rows.length === 0 ? (
        <p>{say("taught.none")}</p>
      ) : (
        <Table
          caption={say("taught.title")}
          rows={rows}
          rowKey={({ entry }) => entry}
          columns={[
            { key: "day", heading: say("taught.day"), names: true, cell: ({ day }) => wholeDay(day), value: ({ day }) => day },
            { key: "what", heading: say("taught.what"), cell: ({ what }) => <Written text={what} />, value: ({ what }) => what },
            { key: "by", heading: say("taught.by"), cell: ({ by }) => <bdi>{who(by)}</bdi>, value: ({ by }) => who(by) },
            {
              key: "right", heading: say("taught.wrong"),
              cell: (lesson) => (
                <button type="button" aria-label={say("taught.put_right_of", { day: wholeDay(lesson.day) })} onClick={() => teach(lesson)}>
                  {say("taught.put_right")}
                </button>
              ),
            },
          ]}
        />
      )}
    </section>
  );
}

function Visits({ coach, squads, who }: { coach: Coach; squads: SquadRow[]; who: (account?: string) => string }) {
  const rows = visitsOf(coach).map((visit, at) => ({ ...visit, at }));
  return (
    <section class="sheet" aria-labelledby="visits-made">
      <h2 id="visits-made">{say("visits")}</h2>
      {rows.length === 0 ? (
        <p>{say("visit.none")}</p>
      ) : (
        <Table
          caption={say("visits")}
          rows={rows}
          rowKey={({ at }) => String(at)}
          columns={[
            { key: "day", heading: say("visit.day"), names: true, cell: ({ day }) => wholeDay(day), value: ({ day }) => day },
            { key: "squad", heading: say("visit.squad"), cell: ({ squad }) => <a href={hashOf("squad", squad)}>{nameOf(squads, squad)}</a>, value: ({ squad }) => nameOf(squads, squad) },
            { key: "by", heading: say("visit.by"), cell: ({ by }) => <bdi>{who(by)}</bdi>, value: ({ by }) => who(by) },
          ]}
        />
      )}
    </section>
  );
}

function AskedFor({ asked }: { asked: Asked[] }) {
  return (
    <section class="sheet" aria-labelledby="asked-for">
      <h2 id="asked-for">{say("help")}</h2>
      {asked.length === 0 ? (
        <p>{say("asked.none")}</p>
      ) : (
        <Table
          caption={say("help")}
          rows={asked}
          rowKey={({ drill }) => drill}
          columns={[
            { key: "drill", heading: say("asked.drill"), names: true, cell: ({ drill }) => <DrillLink id={drill} />, value: ({ drill }) => nameOfDrill(drill) },
            { key: "times", heading: say("asked.times"), numeric: true, cell: ({ times }) => number(times), value: ({ times }) => times },
            { key: "latest", heading: say("asked.latest"), cell: ({ latest }) => wholeDay(latest), value: ({ latest }) => latest },
          ]}
        />
      )}
    </section>
  );
}
