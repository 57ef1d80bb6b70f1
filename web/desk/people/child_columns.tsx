// Children in a table: the name, which leads to the child's page, and the id.
import { named } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import type { Column } from "../shell/table.tsx";
import { say } from "./words.ts";

interface Child {
  player: string;
  name: string;
}

export const childName = <Row extends Child>(): Column<Row> => ({
  key: "name", heading: say("child.name"), names: true, value: ({ name }) => name,
  cell: ({ player, name }) => (
    <a href={hashOf("people", player)}>
      <bdi>{named(name, player)}</bdi>
    </a>
  ),
});

export const childId = <Row extends Child>(): Column<Row> => ({ key: "player", heading: say("child.id"), cell: ({ player }) => player, value: ({ player }) => player });
