// Coaches: who has which squads, who was taught and when, what was told of the last two weeks and asked for help with, and
// whether a phone of theirs is in touch; and one of them by itself.
import { useState } from "preact/hooks";
import type { Account, Device, SquadRow, Week } from "../../shared/api.ts";
import { list, moment, number, shortWholeDay } from "../../shared/words/words.ts";
import { Of, together, useAsked } from "../api/asked.tsx";
import { chargesWords } from "../people/charges.ts";
import { Empty, Head, named } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { type Column, Table } from "../shell/table.tsx";
import { useDrillNames } from "../squad/drill_names.ts";
import { type Coach, lessonsOf } from "./coach.ts";
import { CoachPage } from "./coach_page.tsx";
import { DrillLink } from "./drill_link.tsx";
import { type Lesson, LessonForm } from "./lesson_form.tsx";
import { SurveyForm } from "./survey_form.tsx";
import { SurveyOfAll } from "./survey_told.tsx";
import { mondayBefore, type TwoWeeks, twoWeeksOf } from "./two_weeks.ts";
import { many, say } from "./words.ts";

interface Row {
  coach: Coach;
  account: Account;
  phones: Device[]; // that are still part of the club
  told: TwoWeeks;
}

function rowsOf(coaches: Coach[], accounts: Account[], devices: Device[], weeks: (Week | undefined)[]): Row[] {
  return coaches.flatMap((coach) => {
    const account = accounts.find((one) => one.account === coach.account && !one.ended);
    if (!account) return [];
    const phones = devices.filter((device) => device.account === coach.account && !device.revoked);
    return [{ coach, account, phones, told: twoWeeksOf(account, weeks) }];
  });
}

function toldWords({ held, cut_short, missed }: TwoWeeks): string {
  if (held + cut_short + missed === 0) return say("told.nothing");
  const parts: [("held" | "cut_short" | "missed"), number][] = [["held", held], ["cut_short", cut_short], ["missed", missed]];
  return list(parts.filter(([, count]) => count > 0).map(([word, count]) => many(`told_${word}`, count)));
}

const lastLesson = (coach: Coach): string => lessonsOf(coach)[0]?.day ?? "";

function columnsOf(squads: SquadRow[]): Column<Row>[] {
  return [
    {
      key: "name", heading: say("name"), names: true, value: ({ account }) => account.name,
      cell: ({ account }) => (
        <a href={hashOf("coaches", account.account)}>
          <bdi>{named(account.name, say("a_coach"))}</bdi>
        </a>
      ),
    },
    { key: "squads", heading: say("squads"), cell: ({ account }) => chargesWords("coach", account.charges, squads) },
    { key: "taught", heading: say("taught.last"), cell: ({ coach }) => (lastLesson(coach) ? shortWholeDay(lastLesson(coach)) : say("taught.not_yet")), value: ({ coach }) => lastLesson(coach) },
    { key: "told", heading: say("two_weeks"), cell: ({ told }) => toldWords(told) },
    {
      key: "help", heading: say("help"), value: ({ told }) => told.help.length,
      cell: ({ told }) => told.help.map((id, at) => <span key={id}>{at > 0 ? ", " : ""}<DrillLink id={id} /></span>),
    },
    { key: "visits", heading: say("visits"), numeric: true, cell: ({ coach }) => number(coach.visits.length), value: ({ coach }) => coach.visits.length },
    { key: "phones", heading: say("phones"), cell: ({ phones }) => (phones.length === 0 ? say("no_phone") : many("phones", phones.length)), value: ({ phones }) => phones.length },
    { key: "heard", heading: say("heard"), cell: ({ coach }) => (coach.sent ? moment(coach.sent) : say("never")), value: ({ coach }) => coach.sent ?? "" },
  ];
}

// As the lead's own clock has it.
function dayOf(now: Date): string {
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

export function Screen({ route: { account } }: ScreenProps<"coaches">) {
  const coaches = useAsked("coaches", {});
  const accounts = useAsked("accounts", {});
  const devices = useAsked("devices", {});
  const squads = useAsked("squads", {});
  const today = new Date();
  const this_week = useAsked("week", { monday: mondayBefore(today, 0) });
  const last_week = useAsked("week", { monday: mondayBefore(today, 1) });
  const [teaches, setTeaches] = useState<{ chosen: string[]; before?: Lesson } | undefined>(); // chosen: ticked at first
  const [surveyed, setSurveyed] = useState<string | undefined>(); // account
  useDrillNames();
  const all_squads = squads.said?.squads ?? [];
  const all_accounts = accounts.said?.accounts ?? [];
  return (
    <>
      <Head title={say("title")}>
        <p class="not-on-paper">{say("what")}</p>
      </Head>
      {account ? (
        <p class="not-on-paper">
          <a href={hashOf("coaches")}>{say("all")}</a>
        </p>
      ) : null}
      <Of asked={together(coaches, [accounts, devices, squads, this_week, last_week])}>
        {(said) => {
          const rows = rowsOf(said.coaches, all_accounts, devices.said?.devices ?? [], [this_week.said, last_week.said]);
          const shown = said.coaches.map(({ account: id, name }) => ({ account: id, name: named(name, id) }));
          return (
            <>
              {account ? <One coach={said.coaches.find((one) => one.account === account)} squads={all_squads} accounts={all_accounts} teach={(before) => setTeaches({ chosen: [account], ...(before ? { before } : {}) })} ask={() => setSurveyed(account)} /> : <All rows={rows} asks={accounts.asks} squads={all_squads} teach={() => setTeaches({ chosen: [] })} />}
              {teaches ? <LessonForm coaches={shown} {...teaches} today={dayOf(today)} again={() => coaches.again()} onClose={() => setTeaches(undefined)} /> : null}
              {surveyed ? <SurveyForm coach={surveyed} today={dayOf(today)} again={() => coaches.again()} onClose={() => setSurveyed(undefined)} /> : null}
              {account ? null : <SurveyOfAll coaches={said.coaches} />}
            </>
          );
        }}
      </Of>
    </>
  );
}

function One({ coach, ...rest }: { coach: Coach | undefined; squads: SquadRow[]; accounts: Account[]; teach: (before?: Lesson) => void; ask: () => void }) {
  if (coach) return <CoachPage coach={coach} {...rest} />;
  return (
    <Empty title={say("not_there.title")}>
      <p>{say("not_there.what")}</p>
    </Empty>
  );
}

function All({ rows, asks, squads, teach }: { rows: Row[]; asks: boolean; squads: SquadRow[]; teach: () => void }) {
  if (rows.length === 0 && asks) return <p class="waiting table-tall" role="status" />;
  if (rows.length === 0) {
    return (
      <Empty title={say("none.title")}>
        <p>{say("none.what")}</p>
        <a href={hashOf("people")}>{say("none.step")}</a>
      </Empty>
    );
  }
  return (
    <>
      <p class="row not-on-paper">
        <button type="button" onClick={teach}>
          {say("lesson.open")}
        </button>
      </p>
      <Table caption={say("title")} columns={columnsOf(squads)} rows={rows} rowKey={({ account }) => account.account} />
    </>
  );
}
