// A spreadsheet saved as text: rows of cells, and which column is which, by its heading.
import { type DatesAre, isoDate } from "./sheet_dates.ts";

export type Column = "name" | "first_name" | "last_name" | "id" | "birth" | "squad" | "shirt" | "size_group" | "contact";

// As the club's roster has them (docs/formats/roster.md).
export const kHeadings: Record<Column, string> = {
  name: "Name", first_name: "First name", last_name: "Last name", id: "ID", birth: "Date of birth", squad: "Squad", shirt: "Shirt", size_group: "Size group", contact: "Contact OK",
};

const kKnown: [RegExp, Column][] = [
  [/^(first|given|vor|prenom|nombre de pila)/, "first_name"],
  [/^(last|sur|family|nach|apellido)/, "last_name"],
  [/^(name|player|full name|nombre|jugador|spieler)/, "name"],
  [/^(id|player id|member|licen)/, "id"],
  [/(birth|^dob|born|geburt|nacimiento|naissance)/, "birth"],
  [/^(squad|team|equipo|mannschaft|equipe)/, "squad"],
  [/(shirt|dorsal|trikot)/, "shirt"],
  [/(size|pairing) ?group/, "size_group"],
  [/contact (ok|consent)/, "contact"],
];

export function guessColumn(heading: string): Column | "" {
  const plain = heading.normalize("NFKD").replace(/\p{Diacritic}/gu, "").toLowerCase().trim();
  return kKnown.find(([pattern]) => pattern.test(plain))?.[1] ?? "";
}

// The separator that stands most often in the first line.
function separatorOf(text: string): string {
  const [line = ""] = text.split("\n");
  const count = (mark: string) => line.split(mark).length;
  return [",", ";", "\t"].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

// Quoted cells may hold separators, line ends and doubled quotation marks (RFC 4180). Blank rows go.
export function readRows(text: string): string[][] {
  const separator = separatorOf(text);
  const rows: string[][] = [[]];
  let cell = "";
  let quoted = false;
  const endCell = () => {
    rows.at(-1)!.push(cell.trim());
    cell = "";
  };
  for (let at = 0; at < text.length; at++) {
    const letter = text[at]!;
    if (quoted && letter === '"' && text[at + 1] === '"') {
      cell += '"';
      at++;
    } else if (letter === '"' && (quoted || cell.trim() === "")) quoted = !quoted;
    else if (!quoted && letter === separator) endCell();
    else if (!quoted && letter === "\n") {
      endCell();
      rows.push([]);
    } else if (letter !== "\r") cell += letter;
  }
  endCell();
  return rows.filter((row) => row.some((one) => one !== ""));
}

const quotedCell = (cell: string): string => `"${cell.replaceAll('"', '""').replace(/\s+/g, " ")}"`;

const kSearched = 40; // rows in which the headings are looked for, as core/people/roster_* does

// Titles, dates and the club's name may stand above the headings; rows that repeat them are none of players.
export function tableOf(rows: string[][]): { headings: string[]; rows: string[][]; above: number } {
  const known = (row: string[]) => row.filter((cell) => guessColumn(cell) !== "").length;
  const found = rows.slice(0, kSearched).findIndex((row) => known(row) >= 2);
  const above = Math.max(0, found);
  const headings = rows[above] ?? [];
  const same = (row: string[]) => row.every((cell, at) => cell === (headings[at] ?? ""));
  return { headings, rows: rows.slice(above + 1).filter((row) => !same(row)), above };
}

export const writeCells = (rows: string[][]): string => rows.map((cells) => `${cells.map(quotedCell).join(",")}\n`).join("");

// Only the columns that were chosen: what else stands in the sheet never leaves this computer.
// ids: of the rows, where no column has them. One line a row below the line of headings, so that a fault's line is the row.
export function writeRoster(rows: string[][], columns: (Column | "")[], dates: DatesAre = "", ids: string[] = []): string {
  const chosen = columns.flatMap((column, at) => (column === "" ? [] : [{ column, at }]));
  const cell = (row: string[], column: Column, at: number) => (column === "birth" ? isoDate(row[at] ?? "", dates) : (row[at] ?? ""));
  const own = ids.length > 0 && !columns.includes("id"); // else the sheet has ids of its own
  const headings = [...(own ? [kHeadings.id] : []), ...chosen.map(({ column }) => kHeadings[column])];
  return writeCells([headings, ...rows.map((row, at_row) => [...(own ? [ids[at_row] ?? ""] : []), ...chosen.map(({ column, at }) => cell(row, column, at))])]);
}

// A cell may name several.
export const squadsOf = (cell: string): string[] => cell.split(/[;/,|+]/).map((one) => one.trim()).filter((one) => one !== "");

// 'U13', 'U14 Girls', … with how many.
export function squadsIn(rows: string[][], columns: (Column | "")[]): Map<string, number> {
  const at = columns.indexOf("squad");
  const out = new Map<string, number>();
  if (at < 0) return out;
  for (const row of rows) for (const name of squadsOf(row[at] ?? "")) out.set(name, (out.get(name) ?? 0) + 1);
  return out;
}
