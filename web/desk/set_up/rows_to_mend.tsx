// Rows of the players' sheet with something wrong, each with what it is and the cell to be mended here; the file itself stays
// as it is.
import { faultWords } from "../api/answer.ts";
import { Field, named } from "../shell/parts.tsx";
import { mend, type Sheet } from "./players_sheet.ts";
import type { RowFault } from "./row_faults.ts";
import { nameIn } from "./who_is_who.ts";
import { many, say } from "./words.ts";

const kMost = 30; // shown at once; mended ones make room

function wordsOf({ trouble, told, first }: RowFault): string {
  if (trouble === "told" && told) return faultWords(told);
  return say(`wrong.${trouble === "told" ? "no-such-day" : trouble}`, { row: (first ?? 0) + 1 });
}

export function RowsToMend({ sheet, faults }: { sheet: Sheet; faults: RowFault[] }) {
  if (faults.length === 0) return null;
  const nameOf = (row: number): string => named(nameIn(sheet.rows[row] ?? [], sheet.columns).slice(0, 60), "…");
  return (
    <section aria-labelledby="rows-to-mend">
      <h3 id="rows-to-mend">{many("to_mend", faults.length)}</h3>
      <p class="soft">{say("wrong.what")}</p>
      <ul class="to-mend">
        {faults.slice(0, kMost).map((fault) => (
          <li key={`${fault.row} ${fault.at} ${fault.trouble} ${fault.told?.found ?? ""}`}>
            <p>
              {say("wrong.row", { row: fault.row + 1 })} <bdi>{nameOf(fault.row)}</bdi>: <bdi>{wordsOf(fault)}</bdi>
            </p>
            {fault.at === undefined ? null : (
              <Field label={sheet.headings[fault.at] || say("players.unnamed")}>
                {(given) => <input {...given} type="text" value={sheet.rows[fault.row]?.[fault.at!] ?? ""} onChange={(event) => mend(fault.row, fault.at!, event.currentTarget.value)} autocomplete="off" />}
              </Field>
            )}
          </li>
        ))}
      </ul>
      {faults.length > kMost ? <p class="soft">{many("more_to_mend", faults.length - kMost)}</p> : null}
    </section>
  );
}
