// The sheet as it will be read: above each column what it is, below it the first rows, or all of them.
import { useState } from "preact/hooks";
import { Choice } from "../people/choice.tsx";
import { named } from "../shell/parts.tsx";
import { change, type Sheet } from "./players_sheet.ts";
import type { RowFault } from "./row_faults.ts";
import { type Column, kHeadings } from "./sheet.ts";
import { isoDate } from "./sheet_dates.ts";
import { many, say } from "./words.ts";

const kShown = 8;

const isName = (column: Column | ""): boolean => column === "name" || column === "first_name" || column === "last_name";

export function SheetTable({ sheet: { headings, rows, columns, dates }, faults }: { sheet: Sheet; faults: RowFault[] }) {
  const [all, setAll] = useState(false);
  const options: [string, string][] = [["", say("players.left")], ...(Object.keys(kHeadings) as Column[]).map((one): [string, string] => [one, say(`column.${one}`)])];
  // One column is one thing: what it was elsewhere is left out there.
  const set = (at: number, column: string) => change({ columns: columns.map((one, index) => (index === at ? (column as Column | "") : one === column ? "" : one)) });
  const wrong = (row: number, at: number) => faults.some((fault) => fault.row === row && fault.at === at);
  const shown = (row: string[], at: number): string => {
    const column = columns[at] ?? "";
    if (column === "") return "—";
    const cell = row[at] ?? "";
    return isName(column) ? named(cell, "…") : column === "birth" ? isoDate(cell, dates) : cell;
  };
  return (
    <>
      <div class="table" tabIndex={0} role="region" aria-label={say("players.preview")}>
        <table class="players-sheet">
          <caption>{say(all ? "players.preview_all" : "players.preview")}</caption>
          <thead>
            <tr>
              <th scope="col">{say("players.row")}</th>
              {headings.map((heading, at) => (
                <th key={at} scope="col">
                  <Choice label={heading === "" ? say("players.unnamed") : heading} value={columns[at] ?? ""} options={options} onChange={(one) => set(at, one)} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, all ? rows.length : kShown).map((row, index) => (
              <tr key={index}>
                <td class="soft">{index + 1}</td>
                {headings.map((_, at) => (
                  <td key={at} class={columns[at] === "" ? "soft" : wrong(index, at) ? "fault" : ""}>
                    <bdi>{shown(row, at)}</bdi>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rows.length > kShown ? (
        <button type="button" onClick={() => setAll(!all)}>
          {all ? say("players.show_few") : many("show_all", rows.length)}
        </button>
      ) : null}
    </>
  );
}
