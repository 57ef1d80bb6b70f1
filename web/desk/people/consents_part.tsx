// What families answered, of all children: whom nobody has asked yet comes first, and answers are written down for many
// at once, as the signed papers come in.
import { useState } from "preact/hooks";
import type { SquadRow } from "../../shared/api.ts";
import { list } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Empty, named } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { type Column, Table } from "../shell/table.tsx";
import { AnswerForm } from "./answer_form.tsx";
import { Choice } from "./choice.tsx";
import { nameOf } from "./charges.ts";
import { childSaid, type Consents, isMissing, isWithheld, kPurposes } from "./consent_state.ts";
import type { PartProps } from "./people_screen.tsx";
import { many, say } from "./words.ts";

const kShown = { missing: isMissing, withheld: isWithheld, all: () => true } satisfies Record<string, (one: Consents) => boolean>;
type Shown = keyof typeof kShown;
const isShown = (word: string | undefined): word is Shown => word !== undefined && Object.hasOwn(kShown, word);

export function ConsentsPart({ further }: PartProps) {
  const asked = useAsked("consents", {});
  const squads = useAsked("squads", {}).said?.squads ?? [];
  const shown: Shown = isShown(further.show) ? further.show : "missing";
  const squad = further.squad ?? "";
  const choose = (next: { show?: string; squad?: string }) => {
    const { show: word, squad: of } = { show: shown, squad, ...next };
    go(hashOf("people", undefined, { part: "consents", show: word, ...(of ? { squad: of } : {}) }), { replace: true });
  };
  return (
    <>
      <p>{say("consents.about")}</p>
      <div class="row top">
        <Choice label={say("consents.show")} value={shown} options={(Object.keys(kShown) as Shown[]).map((word) => [word, say(`consents.which.${word}`)])} onChange={(word) => choose({ show: word })} />
        <Choice label={say("find.squad")} value={squad} options={[["", say("consents.every_squad")], ...squads.map(({ id, name }): [string, string] => [id, name])]} onChange={(id) => choose({ squad: id })} />
      </div>
      <Of asked={asked}>
        {({ players }) => {
          const of_squad = players.filter((one) => squad === "" || one.squads.includes(squad));
          return <List key={`${shown} ${squad}`} all={of_squad} rows={of_squad.filter(kShown[shown])} squads={squads} one_squad={squad !== ""} again={() => asked.again()} />;
        }}
      </Of>
    </>
  );
}

const squadsColumn = (squads: SquadRow[]): Column<Consents> => {
  const names = ({ squads: of }: Consents) => list(of.map((id) => nameOf(squads, id)));
  return { key: "squad", heading: say("find.squad"), cell: names, value: names };
};

interface ListProps {
  all: Consents[];
  rows: Consents[]; // those of them that are shown
  squads: SquadRow[];
  one_squad: boolean; // chosen: then its name is in no row
  again: () => Promise<unknown>;
}

function List({ all, rows, squads, one_squad, again }: ListProps) {
  const [ticked, setTicked] = useState<string[]>([]);
  const [asks, setAsks] = useState<string[] | undefined>();
  const here = ticked.filter((player) => rows.some((one) => one.player === player));
  const tick = (player: string, on: boolean) => setTicked(on ? [...here, player] : here.filter((one) => one !== player));
  const name = ({ player, name: full }: Consents): string => named(full, player);
  const columns: Column<Consents>[] = [
    {
      key: "tick", heading: say("consents.tick"),
      cell: (one) => <input type="checkbox" aria-label={say("consents.tick_of", { name: name(one) })} checked={here.includes(one.player)} onChange={(event) => tick(one.player, event.currentTarget.checked)} />,
    },
    {
      key: "name", heading: say("child.name"), names: true, value: name,
      cell: (one) => (
        <a href={hashOf("people", one.player)}>
          <bdi>{name(one)}</bdi>
        </a>
      ),
    },
    ...(one_squad ? [] : [squadsColumn(squads)]),
    ...kPurposes.map((purpose): Column<Consents> => {
      const words = ({ stands }: Consents) => say(`consent.${stands[purpose]}`);
      return { key: purpose, heading: say(`purpose.${purpose}`), cell: words, value: words };
    }),
    { key: "child", heading: say("consents.child"), cell: (one) => say(`consent.${childSaid(one)}`), value: childSaid },
  ];
  const everybody = rows.length > 0 && here.length === rows.length;
  return (
    <>
      <p>
        {many("without_answer", all.filter(isMissing).length, { all: String(all.length) })} {many("withheld", all.filter(isWithheld).length)}
      </p>
      {rows.length === 0 ? (
        <Empty title={say("consents.none")}>
          <p>{say("consents.none_what")}</p>
        </Empty>
      ) : (
        <>
          <p class="row not-on-paper">
            <button type="button" onClick={() => setTicked(everybody ? [] : rows.map(({ player }) => player))}>
              {say(everybody ? "consents.untick_all" : "consents.tick_all")}
            </button>
            <button type="button" class={here.length > 0 ? "main" : ""} aria-disabled={here.length === 0} onClick={() => (here.length > 0 ? setAsks(here) : undefined)}>
              {here.length > 0 ? many("answer_of", here.length) : say("answer.open")}
            </button>
          </p>
          <Table caption={say("part.consents")} columns={columns} rows={rows} rowKey={({ player }) => player} />
        </>
      )}
      {asks ? (
        <AnswerForm
          players={asks}
          today={new Date().toLocaleDateString("sv")}
          entered={() => {
            setTicked([]);
            return again();
          }}
          onClose={() => setAsks(undefined)}
        />
      ) : null}
    </>
  );
}
