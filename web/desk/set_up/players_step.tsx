// The players, from a spreadsheet: which column is which, how it will be read, and nothing else of the sheet taken along.
import { signal } from "@preact/signals";
import { list } from "../../shared/words/words.ts";
import { Choice } from "../people/choice.tsx";
import { Field, named } from "../shell/parts.tsx";
import { paths, write } from "./club_draft.ts";
import { type Column, guessColumn, kHeadings, readRows, squadsIn, writeRoster } from "./sheet.ts";
import { many, say } from "./words.ts";

export const kRoster = "roster.csv";
const kEncodings = ["utf-8", "windows-1252", "windows-1250", "windows-1251", "windows-1253", "windows-1254", "windows-1255", "windows-1256", "macintosh", "shift_jis", "gb18030", "euc-kr", "big5"];
const kShown = 8;

interface Sheet {
  file: string;
  bytes: ArrayBuffer;
  encoding: string;
  headings: string[];
  rows: string[][];
  columns: (Column | "")[];
}

// In this page only; gone with it.
export const sheet = signal<Sheet | undefined>(undefined);

function isUtf8(bytes: ArrayBuffer): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

function take(file: string, bytes: ArrayBuffer, encoding: string): void {
  const [headings = [], ...rows] = readRows(new TextDecoder(encoding).decode(bytes));
  use({ file, bytes, encoding, headings, rows, columns: headings.map(guessColumn) });
}

function use(next: Sheet): void {
  sheet.value = next;
  write(kRoster, { text: writeRoster(next.rows, next.columns) });
}

export function PlayersStep() {
  const there = paths.value.some((path) => /^roster.*\.csv$/.test(path));
  const read = async (event: { currentTarget: HTMLInputElement }) => {
    const file = event.currentTarget.files?.[0];
    if (!file) return;
    const bytes = await file.arrayBuffer();
    take(file.name, bytes, isUtf8(bytes) ? "utf-8" : "windows-1252");
  };
  return (
    <>
      <p>{say("players.what")}</p>
      {there && !sheet.value ? <p>{say("players.there")}</p> : null}
      <Field label={say("players.file")} hint={say("players.file_hint")}>
        {(given) => <input {...given} type="file" accept=".csv,.txt,text/csv,text/plain" onChange={(event) => void read(event)} />}
      </Field>
      {sheet.value ? <Mapping sheet={sheet.value} /> : null}
    </>
  );
}

function Mapping({ sheet: { file, bytes, encoding, headings, rows, columns } }: { sheet: Sheet }) {
  const options: [string, string][] = [["", say("players.left")], ...(Object.keys(kHeadings) as Column[]).map((one): [string, string] => [one, say(`column.${one}`)])];
  const set = (at: number, column: string) => use({ file, bytes, encoding, headings, rows, columns: columns.map((one, index) => (index === at ? (column as Column | "") : one)) });
  const squads = squadsIn(rows, columns);
  const is_name = (column: Column | "") => column === "name" || column === "first_name" || column === "last_name";
  return (
    <section class="sheet">
      <h2>
        <bdi>{file}</bdi>
      </h2>
      <p>{many("players", rows.length)}</p>
      <p>{squads.size === 0 ? say("players.no_squads") : say("players.squads", { squads: list([...squads].map(([name, count]) => `${name} (${count})`)) })}</p>
      <Choice label={say("players.encoding")} hint={say("players.encoding_hint")} value={encoding} options={kEncodings.map((one) => [one, one])} onChange={(one) => take(file, bytes, one)} />
      <div class="table" tabIndex={0} role="region" aria-label={say("players.preview")}>
        <table>
          <caption>{say("players.preview")}</caption>
          <thead>
            <tr>
              {headings.map((heading, at) => (
                <th key={at} scope="col">
                  <Choice label={heading === "" ? say("players.unnamed") : heading} value={columns[at] ?? ""} options={options} onChange={(one) => set(at, one)} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, kShown).map((row, index) => (
              <tr key={index}>
                {headings.map((_, at) => (
                  <td key={at} class={columns[at] === "" ? "soft" : ""}>
                    <bdi>{columns[at] === "" ? "—" : is_name(columns[at] ?? "") ? named(row[at] ?? "", "…") : (row[at] ?? "")}</bdi>
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
