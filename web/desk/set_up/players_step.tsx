// The players, from a spreadsheet: which column is which, how it will be read, and nothing else of the sheet taken along.
import { useEffect, useState } from "preact/hooks";
import { list } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { Choice } from "../people/choice.tsx";
import { announce } from "../shell/announce.ts";
import { Field } from "../shell/parts.tsx";
import { undo } from "../shell/undo.ts";
import { birthOrder, change, isUtf8, known, readKnown, rosterFaults, rosterIsThere, type Sheet, sheet, takeFile, takeText, use } from "./players_sheet.ts";
import { RowsToMend } from "./rows_to_mend.tsx";
import { rowFaults, toldFaults } from "./row_faults.ts";
import { SheetTable } from "./sheet_table.tsx";
import { squadsIn } from "./sheet.ts";
import { WhoKeepsHistory } from "./who_keeps_history.tsx";
import { many, say } from "./words.ts";

const kEncodings = ["utf-8", "windows-1252", "windows-1250", "windows-1251", "windows-1253", "windows-1254", "windows-1255", "windows-1256", "macintosh", "shift_jis", "gb18030", "euc-kr", "big5"];

const kExample = [["Alex Example", "2014-05-31", "U13 Girls"], ["Sam Sample", "2011-02-07", "U16"]]; // nobody

// Another list in place of the one that was being looked at can be taken back.
function replaced(before: Sheet | undefined): void {
  const now = sheet.value;
  if (!now) return;
  announce(many("players", now.rows.length));
  if (before) undo.offer({ words: say("players.replaced", { file: now.file }), undo: () => use(before) });
}

export function PlayersStep() {
  const there = rosterIsThere();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const read_known = async () => setRefused(await readKnown());
  useEffect(() => {
    if (sheet.value && !known.value) void read_known();
  }, [sheet.value, known.value]);
  const [pasted, setPasted] = useState("");
  const read = async (event: { currentTarget: HTMLInputElement }) => {
    const file = event.currentTarget.files?.[0];
    if (!file) return;
    const bytes = await file.arrayBuffer();
    const before = sheet.value;
    takeFile(file.name, bytes, isUtf8(bytes) ? "utf-8" : "windows-1252");
    replaced(before);
  };
  const paste = (event: Event) => {
    event.preventDefault();
    if (pasted.trim() === "") return;
    const before = sheet.value;
    takeText(say("players.pasted"), pasted);
    setPasted("");
    replaced(before);
  };
  return (
    <>
      <p>{say("players.what")}</p>
      {there && !sheet.value ? <p>{say("players.there")}</p> : null}
      <div class="two-ways">
        <Field label={say("players.file")} hint={say("players.file_hint")}>
          {(given) => <input {...given} type="file" accept=".csv,.txt,.tsv,text/csv,text/plain" onChange={(event) => void read(event)} />}
        </Field>
        <form onSubmit={paste}>
          <Field label={say("players.paste")} hint={say("players.paste_hint")}>
            {(given) => <textarea {...given} rows={3} value={pasted} onInput={(event) => setPasted(event.currentTarget.value)} autocomplete="off" spellcheck={false} />}
          </Field>
          <button type="submit" aria-disabled={pasted.trim() === ""}>
            {say("players.use")}
          </button>
        </form>
      </div>
      {refused ? <Refused refusal={refused} again={() => void read_known()} /> : null}
      {sheet.value ? <Mapping sheet={sheet.value} /> : <Example />}
    </>
  );
}

// What a list looks like that is understood at once.
function Example() {
  return (
    <section class="empty">
      <h2>{say("players.example")}</h2>
      <table>
        <caption class="out-of-sight">{say("players.example")}</caption>
        <thead>
          <tr>
            {(["name", "birth", "squad"] as const).map((column) => (
              <th key={column} scope="col">
                {say(`column.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {kExample.map((cells) => (
            <tr key={cells[0]}>
              {cells.map((cell) => (
                <td key={cell}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft">{say("players.example_what")}</p>
    </section>
  );
}

function Mapping({ sheet: now }: { sheet: Sheet }) {
  const { file, bytes, encoding, rows, columns, dates, above } = now;
  const squads = squadsIn(rows, columns);
  const order = birthOrder(now);
  const faults = [...rowFaults(rows, columns, dates), ...toldFaults(rosterFaults.value, columns)];
  const missing = (["birth", "squad"] as const).filter((column) => !columns.includes(column));
  const no_name = !columns.some((column) => column === "name" || column === "first_name" || column === "last_name");
  return (
    <section class="sheet">
      <h2>
        <bdi>{file}</bdi>
      </h2>
      <p>
        {many("players", rows.length)}
        {above > 0 ? `; ${many("above", above)}` : ""}
      </p>
      {no_name ? <p class="fault">{say("players.no_names")}</p> : null}
      {missing.map((column) => (
        <p key={column} class="fault">
          {say(column === "birth" ? "players.no_births" : "players.no_squads")}
        </p>
      ))}
      {squads.size > 0 ? (
        <p>
          <bdi>{say("players.squads", { squads: list([...squads].slice(0, 40).map(([name, count]) => `${name} (${count})`)) })}</bdi>
        </p>
      ) : null}
      <div class="row top">
        {bytes ? <Choice label={say("players.encoding")} hint={say("players.encoding_hint")} value={encoding} options={kEncodings.map((one) => [one, one])} onChange={(one) => takeFile(file, bytes, one)} /> : null}
        {order === "" || dates !== "" ? (
          <Choice
            label={say("players.dates")}
            hint={say("players.dates_hint")}
            value={dates}
            options={[["", say("players.dates_choose")], ["day-first", say("players.day_first")], ["month-first", say("players.month_first")]]}
            onChange={(chosen) => change({ dates: chosen as Sheet["dates"] })}
          />
        ) : null}
      </div>
      {order === "both" ? <p class="fault">{say("players.dates_both")}</p> : null}
      <WhoKeepsHistory sheet={now} />
      <RowsToMend sheet={now} faults={faults} />
      <SheetTable sheet={now} faults={faults} />
    </section>
  );
}
