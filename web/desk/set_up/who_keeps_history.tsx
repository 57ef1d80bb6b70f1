// Of a list in the place of another: who is known and keeps their history, who is new, who leaves; and the few of whom only the
// lead can tell.
import { list } from "../../shared/words/words.ts";
import { Choice } from "../people/choice.tsx";
import { named } from "../shell/parts.tsx";
import { change, known, type Sheet, who } from "./players_sheet.ts";
import { leavers, nameIn } from "./who_is_who.ts";
import { many, say } from "./words.ts";

const kMostNamed = 12;

function someOf(names: string[]): string {
  const shown = names.slice(0, kMostNamed).map((name) => named(name, "…"));
  return list(names.length > kMostNamed ? [...shown, many("others", names.length - kMostNamed)] : shown);
}

export function WhoKeepsHistory({ sheet }: { sheet: Sheet }) {
  const there = known.value ?? [];
  if (there.length === 0) return null;
  const rows = who.value.map((one, row) => ({ ...one, row, name: nameIn(sheet.rows[row] ?? [], sheet.columns) }));
  const is_known = new Set(there.map(({ player }) => player));
  const keeps = rows.filter(({ id }) => is_known.has(id));
  const fresh = rows.filter(({ id }) => !is_known.has(id));
  const gone = leavers(who.value, there);
  const unsure = rows.filter(({ how }) => how === "unsure");
  const choose = (row: number, id: string) => change({ chosen: { ...sheet.chosen, [row]: id } });
  return (
    <section aria-labelledby="who-keeps">
      <h3 id="who-keeps">{say("who.title")}</h3>
      <ul>
        <li>{many("keep_history", keeps.length)}</li>
        {fresh.length > 0 ? (
          <li>
            <bdi>{many("are_new", fresh.length, { names: someOf(fresh.map(({ name }) => name)) })}</bdi>
          </li>
        ) : null}
        {gone.length > 0 ? (
          <li>
            <bdi>{many("leave", gone.length, { names: someOf(gone.map(({ name }) => name)) })}</bdi>
          </li>
        ) : null}
      </ul>
      {keeps.length === 0 ? <p class="fault">{say("who.nobody")}</p> : null}
      {unsure.map(({ row, name, candidates }) => (
        <Choice
          key={row}
          label={say("who.which", { row: row + 1, name: named(name, "…") })}
          value={sheet.chosen[row] ?? ""}
          options={[["", say("who.new")], ...candidates.map(({ player, squads }): [string, string] => [player, say("who.candidate", { player, squads: list(squads) })])]}
          onChange={(id) => choose(row, id)}
        />
      ))}
    </section>
  );
}
