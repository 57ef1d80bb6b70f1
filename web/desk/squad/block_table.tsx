// The block as a grid that the arrow keys move in: each cell a dose, what is new in it in words, and Enter opens the evening.
import { list, shortDay } from "../../shared/words/words.ts";
import { go, hashOf } from "../shell/route.ts";
import { StateSign } from "../week/evening_cell.tsx";
import type { State } from "../week/week_table.ts";
import type { BlockSession, SquadBlock } from "./block.ts";
import { gridOf, type Cell, type Column, type Row } from "./block_grid.ts";
import { doseWords, shortDose } from "./dose_words.ts";
import { nameOfDrill, rungWords } from "./drill_names.ts";
import { sessionInAddress } from "./session_address.ts";
import { useGridKeys } from "./grid_keys.ts";
import { say } from "./words.ts";

const kStates: Record<NonNullable<BlockSession["happened"]>, State> = { "no word": "unheard", held: "held", missed: "not-run", "cut short": "cut-short" };

const edge = ({ opens_week, opens_spell }: Column): string => (opens_spell ? "opens-spell" : opens_week ? "opens-week" : "");

// A week's and a spell's words stand over its first session.
function WeekHeads({ columns, block }: { columns: Column[]; block: SquadBlock }) {
  const opening = columns.filter(({ opens_week }) => opens_week);
  const across = (week: number) => columns.filter(({ session }) => session.week === week).length;
  return (
    <tr class="weeks-of">
      <td />
      {opening.map((column) => {
        const spell = column.opens_spell ? block.spells.filter(({ first_week }) => first_week <= column.session.week).at(-1) : undefined;
        return (
          <th key={column.key} scope="colgroup" colSpan={across(column.session.week)} class={edge(column)}>
            {say("grid.week", { week: column.session.week })}
            {spell && <strong>, {say("grid.spell", { spell: block.spells.indexOf(spell) + 1 })}</strong>}
            {spell && spell.comes_in.length > 0 && <span>{say("grid.comes_in", { drills: list(spell.comes_in.map(nameOfDrill)) })}</span>}
            {spell && spell.leaves.length > 0 && <span>{say("grid.leaves", { drills: list(spell.leaves.map(nameOfDrill)) })}</span>}
          </th>
        );
      })}
    </tr>
  );
}

function SessionHead({ column, href }: { column: Column; href: string }) {
  const { session } = column;
  const state = session.happened && kStates[session.happened];
  return (
    <th scope="col" class={edge(column)}>
      <a href={href}>{shortDay(session.date)}</a>
      <span>
        {session.start}
        {session.match_day && ` ${say("grid.match")}`}
      </span>
      {state ? (
        <span>
          <StateSign state={state} />
          <span class="out-of-sight">{session.happened === "no word" ? say("grid.no_word") : say(`happened.${session.happened as "held"}`)}</span>
        </span>
      ) : (
        <span>{say("time.minutes", { minutes: session.minutes })}</span>
      )}
    </th>
  );
}

function DoseCell({ cell, before }: { cell: Cell; before: Cell | undefined }) {
  const { planned, what, other_rung } = cell;
  if (!planned) {
    return (
      <>
        <span aria-hidden="true">·</span>
        <span class="out-of-sight">{say("grid.away")}</span>
        {what && <em> {say(`grid.${what}`)}</em>}
      </>
    );
  }
  const dose = shortDose(planned);
  const differs = before?.planned !== undefined && (shortDose(before.planned) !== dose || other_rung);
  const shown = planned.done === false ? <s>{dose}</s> : differs ? <strong>{dose}</strong> : dose;
  return (
    <>
      <span aria-hidden="true">{shown}</span>
      <span class="out-of-sight">
        {doseWords(planned)}, {rungWords(planned.drill, planned.rung)}
        {planned.done === false && `, ${say("grid.not_done")}`}
      </span>
      {what && <em> {say(`grid.${what}`)}</em>}
    </>
  );
}

// The doses of trainings are compared with the training before: a match day has a routine of its own.
function beforeOf(row: Row, columns: Column[], at: number): Cell | undefined {
  const own = columns[at]?.session.match_day;
  for (let index = at - 1; index >= 0; index--) {
    if (columns[index]?.session.match_day === own && row.cells[index]?.planned) return row.cells[index];
  }
  return undefined;
}

export function BlockTable({ block }: { block: SquadBlock }) {
  const { columns, rows } = gridOf(block);
  const hrefOf = ({ session }: Column) => hashOf("squad", block.squad, { session: sessionInAddress(session) });
  const keys = useGridKeys(rows.length, columns.length, (_, column) => {
    const opened = columns[column];
    if (opened) go(hrefOf(opened));
  });
  const caption = say("grid.caption", { squad: block.name });
  return (
    <section aria-labelledby="sessions-and-drills">
      <h2 id="sessions-and-drills">{say("grid.title")}</h2>
      <p class="soft">
        {say("grid.reading")} <span class="not-on-paper">{say("grid.how")}</span>
      </p>
      <div class="table block-table">
        <table role="grid" aria-label={caption} {...keys.table}>
          <thead>
            <WeekHeads columns={columns} block={block} />
            <tr>
              <th scope="col">{say("grid.drill")}</th>
              {columns.map((column) => (
                <SessionHead key={column.key} column={column} href={hrefOf(column)} />
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, at) => (
              <tr key={row.drill} class={row.matches_only && !rows[at - 1]?.matches_only ? "matches-begin" : ""}>
                <th scope="row">
                  <a href={hashOf("drills", row.drill)}>{nameOfDrill(row.drill)}</a>
                  {row.matches_only && <span class="out-of-sight">, {say("grid.matches_only")}</span>}
                </th>
                {row.cells.map((cell, column) => (
                  <td key={columns[column]?.key} class={columns[column] ? edge(columns[column]) : ""} {...keys.cell(at, column)}>
                    <DoseCell cell={cell} before={beforeOf(row, columns, column)} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
