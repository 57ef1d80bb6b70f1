// One child: what was entered and when, who read it, what was agreed to; a copy for the family, and the end of all of it.
import { useState } from "preact/hooks";
import type { SeenEntry, SquadRow } from "../../shared/api.ts";
import { list, moment, wholeDay } from "../../shared/words/words.ts";
import type { Said } from "../api/answer.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { named, Written } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { type Column, Table } from "../shell/table.tsx";
import { AnswerForm } from "./answer_form.tsx";
import { nameOf } from "./charges.ts";
import { ageGroupWords, fieldsOf, kindWords } from "./entry_words.ts";
import { EraseChild } from "./erase_child.tsx";
import { ExportChild } from "./export_child.tsx";
import { ReadTable } from "./reads.tsx";
import { many, say } from "./words.ts";

type Timeline = Said<"timeline">;

export function ChildPart({ player }: { player: string }) {
  const timeline = useAsked("timeline", { player });
  const squads = useAsked("squads", {});
  const accounts = useAsked("accounts", {});
  const [shows, setShows] = useState<"timeline" | "answer" | "export" | "erase">("timeline");
  const [erased, setErased] = useState(false);
  const close = () => setShows("timeline");
  if (erased) return <Erased />;
  return (
    <Of asked={timeline}>
      {(said) => (
        <>
          <section aria-labelledby="child">
            <h2 id="child">
              <bdi>{named(said.name, said.player)}</bdi>
            </h2>
            <p>
              {say("child.who", { id: said.player, age_group: ageGroupWords(said.age_group), squads: list(said.squads.map((id) => nameOf(squads.said?.squads ?? [], id))) })}
              <br />
              {say("child.now", { word: say(`standing.${said.word}`) })}
            </p>
            <Consents consents={said.consents} />
            <p class="row not-on-paper">
              <button type="button" onClick={() => setShows("answer")}>
                {say("answer.open")}
              </button>
              <button type="button" onClick={() => setShows("export")}>
                {say("export.open")}
              </button>
              <button type="button" onClick={() => setShows("erase")}>
                {say("erase.open")}
              </button>
            </p>
          </section>
          <Entries timeline={said} authors={accounts.said?.accounts ?? []} squads={squads.said?.squads ?? []} />
          <section class="sheet">
            <h2>{say("child.read_by")}</h2>
            <ReadTable reads={said.read_by} accounts={accounts.said?.accounts ?? []} squads={squads.said?.squads ?? []} caption={say("child.read_by")} />
          </section>
          {shows === "answer" ? <AnswerForm players={[player]} today={said.now.slice(0, 10)} entered={() => timeline.again()} onClose={close} /> : null}
          {shows === "export" ? <ExportChild player={player} onClose={close} /> : null}
          {shows === "erase" ? <EraseChild player={player} erased={() => setErased(true)} onClose={close} /> : null}
        </>
      )}
    </Of>
  );
}

function Consents({ consents }: { consents: Timeline["consents"] }) {
  return (
    <dl class="pairs">
      {(["training", "injury-record", "statistics"] as const).map((purpose) => (
        <div key={purpose}>
          <dt>{say(`purpose.${purpose}`)}</dt>
          <dd>{say(`consent.${consents[purpose]}`)}</dd>
        </div>
      ))}
    </dl>
  );
}

function Entries({ timeline, authors, squads }: { timeline: Timeline; authors: { account: string; name: string }[]; squads: SquadRow[] }) {
  const who = (entry: SeenEntry): string => {
    const { author, author_role } = entry as SeenEntry & { author?: string; author_role?: keyof typeof kRoleKeys };
    const role = author_role && author_role in kRoleKeys ? say(kRoleKeys[author_role]) : "";
    return named(authors.find(({ account }) => account === author)?.name ?? role, role);
  };
  const columns: Column<SeenEntry>[] = [
    { key: "received", heading: say("entries.when"), cell: ({ received }) => moment(received), value: ({ received }) => received },
    { key: "kind", heading: say("entries.kind"), names: true, cell: ({ kind }) => kindWords(kind), value: ({ kind }) => kindWords(kind) },
    {
      key: "what", heading: say("entries.what"),
      cell: (entry) => fieldsOf(entry, squads).map(([key, value]) => <div key={key}>{key}: <Written text={value} /></div>),
    },
    { key: "who", heading: say("entries.who"), cell: (entry) => <bdi>{who(entry)}</bdi>, value: who },
  ];
  return (
    <section class="sheet">
      <h2>{say("entries.title")}</h2>
      {timeline.closed > 0 ? <p>{many("closed", timeline.closed)}</p> : null}
      {timeline.entries.length === 0 ? <p>{say("entries.none")}</p> : <Table caption={say("entries.title")} columns={columns} rows={timeline.entries} rowKey={({ id }) => id} sorting={{ by: "received", down: true }} />}
      <p class="on-paper">{say("entries.printed", { day: wholeDay(timeline.now.slice(0, 10)) })}</p>
    </section>
  );
}

const kRoleKeys = { lead: "role.lead", coach: "role.coach", recorder: "role.recorder", board: "role.board", operator: "role.operator" } as const;

function Erased() {
  return (
    <section role="status">
      <h2>{say("erase.done")}</h2>
      <p>{say("erase.remains")}</p>
      <a href={hashOf("people", undefined, { part: "child" })}>{say("erase.back")}</a>
    </section>
  );
}
