// Coaches: who has which squads, what was told of the last two weeks and asked for help with, and whether a phone of theirs
// is in touch.
import type { Account, Device, SquadRow, Week } from "../../shared/api.ts";
import { drillWords, fetchRendering } from "../../shared/words/renderings.ts";
import { language, list, moment, number } from "../../shared/words/words.ts";
import { useEffect } from "preact/hooks";
import { Of, useAsked } from "../api/asked.tsx";
import { chargesWords } from "../people/charges.ts";
import { Empty, Head, named } from "../shell/parts.tsx";
import { spanishDrills } from "../shell/places.ts";
import { hashOf } from "../shell/route.ts";
import { kScreens } from "../shell/screens.ts";
import { type Column, Table } from "../shell/table.tsx";
import { mondayBefore, type TwoWeeks, twoWeeksOf } from "./two_weeks.ts";
import { many, say } from "./words.ts";

interface Coach {
  account: Account;
  devices: Device[]; // that are still part of the club
  heard?: string; // from the one last heard of
  told: TwoWeeks;
}

function coachesOf(accounts: Account[], devices: Device[], weeks: (Week | undefined)[]): Coach[] {
  return accounts
    .filter(({ role, ended }) => role === "coach" && !ended)
    .map((account) => {
      const own = devices.filter((device) => device.account === account.account && !device.revoked);
      const heard = own.flatMap(({ seen }) => seen ?? []).sort().at(-1);
      return { account, devices: own, told: twoWeeksOf(account, weeks), ...(heard ? { heard } : {}) };
    });
}

function toldWords({ held, cut_short, missed }: TwoWeeks): string {
  if (held + cut_short + missed === 0) return say("told.nothing");
  const parts: [("held" | "cut_short" | "missed"), number][] = [["held", held], ["cut_short", cut_short], ["missed", missed]];
  return list(parts.filter(([, count]) => count > 0).map(([word, count]) => say(`told.${word}`, { count: number(count) })));
}

// Its name in the language that is shown; else its id, which is its name in short.
function Drill({ id }: { id: string }) {
  const name = drillWords(id)?.name ?? id.replaceAll("-", " ");
  return kScreens.drills ? <a href={hashOf("drills", id)}>{name}</a> : <>{name}</>;
}

function columnsOf(squads: SquadRow[]): Column<Coach>[] {
  return [
    {
      key: "name", heading: say("name"), names: true, value: ({ account }) => account.name,
      cell: ({ account }) => (
        <a href={hashOf("people", undefined, { account: account.account })}>
          <bdi>{named(account.name, say("a_coach"))}</bdi>
        </a>
      ),
    },
    { key: "squads", heading: say("squads"), cell: ({ account }) => chargesWords("coach", account.charges, squads) },
    { key: "told", heading: say("two_weeks"), cell: ({ told }) => toldWords(told) },
    {
      key: "help", heading: say("help"), value: ({ told }) => told.help.length,
      cell: ({ told }) => told.help.map((id, at) => <span key={id}>{at > 0 ? ", " : ""}<Drill id={id} /></span>),
    },
    { key: "visits", heading: say("visits"), numeric: true, cell: ({ told }) => number(told.visits), value: ({ told }) => told.visits },
    { key: "phones", heading: say("phones"), cell: ({ devices }) => (devices.length === 0 ? say("no_phone") : many("phones", devices.length)), value: ({ devices }) => devices.length },
    { key: "heard", heading: say("heard"), cell: ({ heard }) => (heard ? moment(heard) : say("never")), value: ({ heard }) => heard ?? "" },
  ];
}

export function Screen() {
  const accounts = useAsked("accounts", {});
  const devices = useAsked("devices", {});
  const squads = useAsked("squads", {});
  const today = new Date();
  const this_week = useAsked("week", { monday: mondayBefore(today, 0) });
  const last_week = useAsked("week", { monday: mondayBefore(today, 1) });
  useEffect(() => {
    if (language.value === "es") void fetchRendering("es", spanishDrills);
  }, [language.value]);
  return (
    <>
      <Head title={say("title")}>
        <p>{say("what")}</p>
      </Head>
      <Of asked={accounts}>
        {(said) => {
          const coaches = coachesOf(said.accounts, devices.said?.devices ?? [], [this_week.said, last_week.said]);
          if (coaches.length > 0) return <Table caption={say("title")} columns={columnsOf(squads.said?.squads ?? [])} rows={coaches} rowKey={({ account }) => account.account} />;
          return (
            <Empty title={say("none.title")}>
              <p>{say("none.what")}</p>
              <a href={hashOf("people")}>{say("none.step")}</a>
            </Empty>
          );
        }}
      </Of>
    </>
  );
}
