// The book of reads: who looked at what about whom, the latest first; by person and by kind of reading.
import type { Account, ReadNote, SquadRow } from "../../shared/api.ts";
import { moment, number } from "../../shared/words/words.ts";
import { Of, together, useAsked } from "../api/asked.tsx";
import { Empty, named } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { type Column, Table } from "../shell/table.tsx";
import { nameOf } from "./charges.ts";
import { Choice } from "./choice.tsx";
import type { PartProps } from "./people_screen.tsx";
import { many, say } from "./words.ts";
import en from "./words/en.json";

const isRead = (what: string): what is keyof typeof en.read => Object.hasOwn(en.read, what);
const readWords = (what: string): string => (isRead(what) ? say(`read.${what}`) : what);

interface ReadTableProps {
  reads: ReadNote[];
  accounts: Account[];
  squads: SquadRow[];
  caption: string;
}

const nameIn = (accounts: Account[], account: string): string => accounts.find((one) => one.account === account)?.name ?? account;

export function ReadTable({ reads, accounts, squads, caption }: ReadTableProps) {
  const who = ({ account }: ReadNote): string => named(nameIn(accounts, account), account);
  const columns: Column<ReadNote>[] = [
    { key: "when", heading: say("reads.when"), cell: ({ when }) => moment(when), value: (one) => one.number },
    { key: "who", heading: say("reads.who"), names: true, cell: (one) => <bdi>{who(one)}</bdi>, value: who },
    { key: "what", heading: say("reads.what"), cell: ({ what }) => readWords(what), value: ({ what }) => readWords(what) },
    { key: "squad", heading: say("reads.squad"), cell: ({ squad }) => (squad ? nameOf(squads, squad) : ""), value: ({ squad }) => squad ?? "" },
    { key: "people", heading: say("reads.people"), numeric: true, cell: ({ people }) => number(people), value: ({ people }) => people },
    { key: "by", heading: say("reads.by"), cell: ({ device }) => say(device ? "reads.phone" : "reads.browser"), value: ({ device }) => (device ? 1 : 0) },
  ];
  if (reads.length === 0) return <p>{say("reads.not_yet")}</p>;
  return <Table caption={caption} columns={columns} rows={reads} rowKey={(one) => String(one.number)} sorting={{ by: "when", down: true }} />;
}

export function ReadsPart({ further }: PartProps) {
  const asked = useAsked("reads", {});
  const accounts = useAsked("accounts", {});
  const squads = useAsked("squads", {});
  const { who = "", what = "" } = further;
  const choose = (chosen: { who?: string; what?: string }) => {
    const next = Object.entries({ who, what, ...chosen }).filter(([, value]) => value !== "");
    go(hashOf("people", undefined, { part: "reads", ...Object.fromEntries(next) }), { replace: true });
  };
  return (
    <>
      <p class="soft">{say("reads.about")}</p>
      <Of asked={together(asked, [accounts, squads])}>
        {({ reads }) => {
          if (reads.length === 0) return <Empty title={say("reads.none")}><p>{say("reads.none_what")}</p></Empty>;
          const shown = reads.filter((one) => (who === "" || one.account === who) && (what === "" || one.what === what));
          const people = [...new Set(reads.map(({ account }) => account))];
          return (
            <>
              <div class="row top">
                <Choice label={say("reads.who")} value={who} onChange={(value) => choose({ who: value })} options={[["", say("reads.all")], ...people.map((one): [string, string] => [one, named(nameIn(accounts.said?.accounts ?? [], one), one)])]} />
                <Choice label={say("reads.what")} value={what} onChange={(value) => choose({ what: value })} options={[["", say("reads.all")], ...[...new Set(reads.map((one) => one.what))].map((one): [string, string] => [one, readWords(one)])]} />
                <p role="status">{many("reads", shown.length)}</p>
              </div>
              <ReadTable reads={shown} accounts={accounts.said?.accounts ?? []} squads={squads.said?.squads ?? []} caption={say("part.reads")} />
            </>
          );
        }}
      </Of>
    </>
  );
}
