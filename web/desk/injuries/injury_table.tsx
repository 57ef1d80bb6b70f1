// Injuries as a table: since when, what, how many days lost; names only where they were asked for.
import type { SquadRow } from "../../shared/api.ts";
import { shortDay, shortWholeDay } from "../../shared/words/words.ts";
import { nameOf } from "../people/charges.ts";
import { named } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { type Column, Table } from "../shell/table.tsx";
import type { Injury } from "./injury.ts";
import type { Persons } from "./persons.ts";
import { injuryWords } from "./terms.ts";
import { many, say } from "./words.ts";

interface TableProps {
  caption: string;
  injuries: Injury[];
  persons: Persons | undefined;
  squads: SquadRow[];
}

export function InjuryTable({ caption, injuries, persons, squads }: TableProps) {
  const person = ({ player }: Injury) => named(persons?.get(player) ?? player, player);
  const look = ({ review = "" }: Injury) => review;
  const lost = ({ days_lost = 0, open = true }: Injury) => many(open ? "days_so_far" : "days", days_lost);
  const columns: Column<Injury>[] = [
    {
      key: "player", heading: say("list.player"), names: true, value: person,
      cell: (one) => (
        <a href={hashOf("injuries", one.injury)}>
          <bdi>{person(one)}</bdi>
        </a>
      ),
    },
    { key: "what", heading: say("list.what"), cell: ({ what }) => injuryWords(what), value: ({ what }) => injuryWords(what) },
    { key: "squad", heading: say("form.squad"), cell: ({ squad }) => nameOf(squads, squad), value: ({ squad }) => nameOf(squads, squad) },
    { key: "day", heading: say("list.day"), cell: ({ day }) => shortWholeDay(day), value: ({ day }) => day },
    { key: "lost", heading: say("list.lost"), numeric: true, cell: lost, value: ({ days_lost = 0 }) => days_lost },
  ];
  if (injuries.some(({ open = true }) => open)) columns.push({ key: "look", heading: say("list.look"), cell: (one) => (look(one) ? shortDay(look(one)) : say("list.no_look")), value: look });
  if (!injuries.some(({ open = true }) => open)) columns.push({ key: "returned", heading: say("list.returned"), cell: ({ returned }) => (returned ? shortWholeDay(returned) : ""), value: ({ returned = "" }) => returned });
  return <Table caption={caption} columns={columns} rows={injuries} rowKey={({ injury }) => injury} />;
}
