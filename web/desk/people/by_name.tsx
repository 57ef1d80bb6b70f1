// A child by its name: all names are asked for once, by a click, and that is one line in the book of reads. What is typed
// stays in this field; it goes into no address and to no server.
import { useState } from "preact/hooks";
import { list } from "../../shared/words/words.ts";
import type { SquadRow } from "../../shared/api.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Field } from "../shell/parts.tsx";
import { withoutNames } from "../shell/preferences.ts";
import { Table } from "../shell/table.tsx";
import { nameOf } from "./charges.ts";
import { childId, childName } from "./child_columns.tsx";
import { many, say } from "./words.ts";

const kMostShown = 20; // more are no answer to a name
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();

export function ByName({ squads }: { squads: SquadRow[] }) {
  const [opened, setOpened] = useState(false);
  const [typed, setTyped] = useState("");
  const asked = useAsked("players", {}, opened);
  if (withoutNames.value) return <p class="soft">{say("find.names_hidden")}</p>;
  if (!opened) {
    return (
      <p>
        <button type="button" onClick={() => setOpened(true)}>
          {say("find.by_name")}
        </button>
      </p>
    );
  }
  return (
    <Of asked={asked} height="table">
      {({ players }) => {
        const words = plain(typed).split(/\s+/).filter((word) => word !== "");
        const found = words.length === 0 ? [] : players.filter(({ name }) => words.every((word) => plain(name).includes(word)));
        return (
          <div class="table-tall">
            <Field label={say("find.name")} hint={many("players", players.length)}>
              {(given) => <input {...given} type="search" value={typed} onInput={(event) => setTyped(event.currentTarget.value)} autocomplete="off" spellcheck={false} />}
            </Field>
            <p role="status">{words.length === 0 ? "" : many("found", found.length)}</p>
            {found.length > 0 ? (
              <Table
                caption={say("part.child")}
                rows={found.slice(0, kMostShown)}
                rowKey={({ player }) => player}
                columns={[
                  childName(),
                  { key: "squads", heading: say("find.squad"), cell: ({ squads: of }) => list(of.map((id) => nameOf(squads, id))) },
                  childId(),
                ]}
              />
            ) : null}
          </div>
        );
      }}
    </Of>
  );
}
