// The sheet of players that was chosen, as it is understood. In this page only, and gone with it.
import { signal } from "@preact/signals";
import { write } from "./club_draft.ts";
import type { OfRoster } from "./row_faults.ts";
import { type Column, guessColumn, readRows, tableOf, writeRoster } from "./sheet.ts";
import { type DatesAre, orderOf } from "./sheet_dates.ts";

export const kRoster = "roster.csv";

export interface Sheet {
  file: string;
  bytes: ArrayBuffer | undefined; // to read it again by other letters; not of what was pasted
  encoding: string;
  above: number; // rows above the headings
  headings: string[];
  rows: string[][];
  columns: (Column | "")[];
  dates: DatesAre;
}

export const sheet = signal<Sheet | undefined>(undefined);
// What the server found in the list as it was sent last.
export const rosterFaults = signal<OfRoster[]>([]);

export function isUtf8(bytes: ArrayBuffer): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

function understood(file: string, text: string, more: Pick<Sheet, "bytes" | "encoding">): Sheet {
  const { headings, rows, above } = tableOf(readRows(text));
  return { file, ...more, above, headings, rows, columns: headings.map(guessColumn), dates: "" };
}

export function takeFile(file: string, bytes: ArrayBuffer, encoding: string): void {
  use(understood(file, new TextDecoder(encoding).decode(bytes), { bytes, encoding }));
}

export function takeText(file: string, text: string): void {
  use(understood(file, text, { bytes: undefined, encoding: "utf-8" }));
}

export function use(next: Sheet): void {
  sheet.value = next;
  rosterFaults.value = [];
  write(kRoster, { text: writeRoster(next.rows, next.columns, next.dates) });
}

export function change(keys: Partial<Sheet>): void {
  if (sheet.value) use({ ...sheet.value, ...keys });
}

const kFirstLine = 2; // of the list that is sent, below its headings

// One cell mended; what the server said of the others stays.
export function mend(row: number, at: number, cell: string): void {
  const now = sheet.value;
  if (!now) return;
  const rows = now.rows.map((cells, index) => (index === row ? now.headings.map((_, column) => (column === at ? cell : (cells[column] ?? ""))) : cells));
  const others = rosterFaults.value.filter(({ line }) => line !== row + kFirstLine);
  use({ ...now, rows });
  rosterFaults.value = others;
}

export function birthOrder({ rows, columns }: Sheet): ReturnType<typeof orderOf> {
  const at = columns.indexOf("birth");
  return at < 0 ? "none" : orderOf(rows.map((row) => row[at] ?? ""));
}
