// The sheet of players that was chosen, as it is understood. In this page only, and gone with it.
import { computed, signal } from "@preact/signals";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { contentOf, paths, write } from "./club_draft.ts";
import type { OfRoster } from "./row_faults.ts";
import { type Column, guessColumn, readRows, squadsIn, tableOf, writeRoster } from "./sheet.ts";
import { type DatesAre, orderOf } from "./sheet_dates.ts";
import { freshIds, type Known, type Who, whoIsWho } from "./who_is_who.ts";

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
  fresh: string[]; // an id for each row, should it be somebody new
  chosen: Record<number, string>; // of rows that might be one of two
}

export const sheet = signal<Sheet | undefined>(undefined);
// What the server found in the list as it was sent last.
export const rosterFaults = signal<OfRoster[]>([]);
// Whom the club knows; undefined: not read yet. Reading it is a line in the book of reads, so only once a list is chosen.
export const known = signal<Known[] | undefined>(undefined);

// Squads that the list names, with how many of each; also once it is saved.
export const listed = signal<Map<string, number>>(new Map());

export const rosterIsThere = (): boolean => paths.value.some((path) => /^roster.*\.csv$/.test(path));

export const who = computed<Who[]>(() => {
  const now = sheet.value;
  return now && known.value ? whoIsWho(now.rows, now.columns, known.value, now.fresh, now.chosen) : [];
});

export function isUtf8(bytes: ArrayBuffer): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

// 'U13 Girls' of u13-girls: as the list of players names the squad.
function labelOf(squad: string): string {
  const content = contentOf(`squads/${squad}.toml`);
  return String(content?.in_roster ?? content?.name ?? squad);
}

// Undefined where it is read; a list is no draft before, since its rows would be numbered anew.
export async function readKnown(): Promise<Refusal | undefined> {
  const answer = rosterIsThere() ? await ask("players", {}) : undefined;
  if (answer && !answer.ok) return answer;
  known.value = (answer?.said.players ?? []).map(({ player, name, squads }) => ({ player, name, squads: squads.map(labelOf) }));
  const first = known.value.length === 0;
  if (sheet.value) use({ ...sheet.value, fresh: freshIds(sheet.value.rows.length, first) });
  return undefined;
}

function understood(file: string, text: string, more: Pick<Sheet, "bytes" | "encoding">): Sheet {
  const { headings, rows, above } = tableOf(readRows(text));
  return { file, ...more, above, headings, rows, columns: headings.map(guessColumn), dates: "", fresh: freshIds(rows.length, known.value?.length === 0), chosen: {} };
}

export function takeFile(file: string, bytes: ArrayBuffer, encoding: string): void {
  use(understood(file, new TextDecoder(encoding).decode(bytes), { bytes, encoding }));
}

export function takeText(file: string, text: string): void {
  use(understood(file, text, { bytes: undefined, encoding: "utf-8" }));
}

export function use(next: Sheet): void {
  sheet.value = next;
  listed.value = squadsIn(next.rows, next.columns);
  rosterFaults.value = [];
  if (known.value) write(kRoster, { text: writeRoster(next.rows, next.columns, next.dates, who.value.map(({ id }) => id)) });
}

export function change(keys: Partial<Sheet>): void {
  if (sheet.value) use({ ...sheet.value, ...keys });
}

// Saved, or no longer wanted: the next list is compared with those who are of the club then.
export function putAway(): void {
  sheet.value = undefined;
  rosterFaults.value = [];
  known.value = undefined;
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
