// Squads down, days across. Days on which no squad has anything stay narrow, so that the others have room.
import { number, shortDay, weekday } from "../../shared/words/words.ts";
import { hashOf } from "../shell/route.ts";
import { weekFrom } from "./days.ts";
import { EveningCell, StateSign } from "./evening_cell.tsx";
import { useWeekKeys, type WeekKeys } from "./week_keys.ts";
import type { SquadWeek, State, Tonight } from "./week_table.ts";
import { many, rangeOf, say } from "./words.ts";

const kStates: State[] = ["held", "cut-short", "not-run", "nobody", "begun", "unheard", "to-come", "falls-out"];

function Signs() {
  return (
    <p class="signs soft">
      <span class="out-of-sight">{say("signs")}: </span>
      {kStates.map((state) => (
        <span key={state}>
          <StateSign state={state} /> {say(`state.${state}`)}
        </span>
      ))}
    </p>
  );
}

function sumWords({ run, over, minutes }: SquadWeek): string {
  if (over === 0) return say("table.nothing_yet");
  return say("table.sum", { run, over, minutes: number(minutes) });
}

// Most evenings nobody has swaps or sits out: that goes without saying.
function tonightWords({ joins_in, with_swaps, sits_out }: Tonight): string {
  const held = [...(with_swaps > 0 ? [many("tonight_swaps", with_swaps)] : []), ...(sits_out > 0 ? [many("tonight_out", sits_out)] : [])];
  return [many("tonight_joins", joins_in), ...held].join(", ");
}

interface SquadLineProps {
  row: SquadWeek;
  at: number; // among the rows
  days: string[];
  keys: WeekKeys;
  tonight: Tonight | undefined;
  look: (squad: string) => void;
}

function SquadLine({ row, at, days, keys, tonight, look }: SquadLineProps) {
  return (
    <tr>
      <th scope="row">
        <a {...keys.stop(at, 0)} href={hashOf("squad", row.squad)}>{row.name}</a>
        <span class="soft">{sumWords(row)}</span>
        {tonight && <span>{tonightWords(tonight)}</span>}
        <button type="button" class="quiet" {...keys.stop(at, 1)} aria-label={say("who.about", { squad: row.name })} onClick={() => look(row.squad)}>
          {say("table.who")}
        </button>
      </th>
      {row.days.map((evenings, index) =>
        evenings.length === 0 ? (
          <td key={index} {...keys.stop(at, index + 2)} aria-label={say("table.nothing_on", { squad: row.name, day: weekday(days[index] ?? "") })} />
        ) : (
          <td key={index}>
            {evenings.map((evening, nth) => (
              <EveningCell key={evening.start} evening={evening} name={row.name} stop={keys.stop(at, index + 2, nth)} />
            ))}
          </td>
        ),
      )}
    </tr>
  );
}

interface WeekRowsProps {
  rows: SquadWeek[];
  monday: string;
  today: string;
  tonightOf: (squad: string) => Tonight | undefined;
  look: (squad: string) => void;
}

export function WeekRows({ rows, monday, today, tonightOf, look }: WeekRowsProps) {
  const days = weekFrom(monday);
  const caption = say("table.caption", { range: rangeOf(monday, days[6] ?? monday) });
  const keys = useWeekKeys();
  const used = days.map((_, index) => rows.some((row) => (row.days[index]?.length ?? 0) > 0));
  return (
    <>
      <Signs />
      <p id="week-keys" class="soft week-keys not-on-paper">
        {say("table.how")}
      </p>
      <div class="week-table">
        <table role="grid" aria-describedby="week-keys" {...keys.table}>
          <caption class="out-of-sight">{caption}</caption>
          <thead>
            <tr>
              <th scope="col">{say("table.squad")}</th>
              {days.map((day, index) => (
                <th key={day} scope="col" class={used[index] ? "day" : "day empty-day"} aria-current={day === today ? "date" : undefined}>
                  {shortDay(day)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, at) => (
              <SquadLine key={row.squad} row={row} at={at} days={days} keys={keys} tonight={tonightOf(row.squad)} look={look} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
