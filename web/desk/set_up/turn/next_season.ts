// The club a year on as the server proposes it (docs/formats/club.md, 'The turn of a season'), with the lead's own moves put to
// it: who goes where, what does not fit, and the change of the club's documents that makes it so. Pure.
import type { Said } from "../../api/answer.ts";
import { keyOf } from "../who_is_who.ts";
import { guessColumn, readRows, writeCells } from "../sheet.ts";

export type NextSeason = Said<"season-turn">;
export type NextSquad = NextSeason["squads"][number];
export type MovedPlayer = NextSeason["players"][number];
export type DocumentChange = NextSeason["changes"][number];
export type Moves = Record<string, string[]>; // by player: squads of the next season

export const goesTo = (player: MovedPlayer, moves: Moves): string[] => moves[player.player] ?? player.to;

// 12 of 'U13' and of 'Under-13 Kestrels': whom its band takes on the season's first day; none where no name has a band.
export function oldestOf({ label, name, squad }: NextSquad): number | undefined {
  const band = [label, name, squad].map((text) => /\bu(?:nder)?[- ]?(\d{1,2})\b/i.exec(text)?.[1]).find((one) => one !== undefined);
  return band === undefined ? undefined : Number(band) - 1;
}

export const isTooOld = ({ age }: MovedPlayer, squad: NextSquad): boolean => age !== undefined && age > (oldestOf(squad) ?? age);

export function moved(moves: Moves, player: MovedPlayer, from: string | undefined, to: string | undefined): Moves {
  const rest = goesTo(player, moves).filter((squad) => squad !== from && squad !== to);
  const now = to === undefined ? rest : [...rest, to];
  const { [player.player]: _, ...others } = moves;
  return now.join() === player.to.join() ? others : { ...others, [player.player]: now };
}

export const inSquad = (next: NextSeason, moves: Moves, squad: string): MovedPlayer[] => next.players.filter((player) => goesTo(player, moves).includes(squad));
export const withoutSquad = (next: NextSeason, moves: Moves): MovedPlayer[] => next.players.filter((player) => goesTo(player, moves).length === 0);

const kRoster = "roster.csv";
const kSquads = "; "; // between two squads of one cell

interface RosterTable {
  headings: string[];
  rows: string[][];
}

function tableOf(text: string | undefined): RosterTable {
  const [headings = [], ...rows] = readRows(text ?? "");
  return { headings, rows };
}

const cellAt = ({ headings }: RosterTable, row: string[], column: string): string => {
  const at = headings.findIndex((heading) => guessColumn(heading) === column);
  return at < 0 ? "" : (row[at] ?? "");
};

// Somebody whom the proposal left out has no row there: it is made of what the list of the season before has.
function rowOf({ player, name }: MovedPlayer, now: RosterTable, before: RosterTable): string[] | undefined {
  const there = now.rows.find((row) => cellAt(now, row, "id") === player);
  if (there) return there;
  const old = before.rows.find((row) => cellAt(before, row, "id") === player) ?? before.rows.find((row) => keyOf(cellAt(before, row, "name")) === keyOf(name));
  if (!old) return undefined;
  return now.headings.map((heading) => {
    const column = guessColumn(heading);
    return column === "id" ? player : column === "" ? "" : cellAt(before, old, column);
  });
}

function rosterText(next: NextSeason, moves: Moves): string {
  const now = tableOf(next.changes.find(({ path }) => path === kRoster)?.text);
  const before = tableOf(next.back.filter(({ path, text }) => /^roster.*\.csv$/.test(path) && text !== undefined)[0]?.text);
  const squad_at = now.headings.findIndex((heading) => guessColumn(heading) === "squad");
  const labelOf = (id: string) => next.squads.find(({ squad }) => squad === id)?.label ?? id;
  const rows = next.players.flatMap((player) => {
    const squads = goesTo(player, moves);
    const row = squads.length === 0 ? undefined : rowOf(player, now, before);
    return row ? [now.headings.map((_, at) => (at === squad_at ? squads.map(labelOf).join(kSquads) : (row[at] ?? "")))] : [];
  });
  return writeCells([now.headings, ...rows]);
}

// Without moves the proposal as it is. A squad that nobody goes to is no squad; its file is not written.
export function changesOf(next: NextSeason, moves: Moves): DocumentChange[] {
  if (Object.keys(moves).length === 0) return next.changes;
  const empty = new Set(next.squads.filter(({ squad }) => inSquad(next, moves, squad).length === 0).map(({ squad }) => `squads/${squad}.toml`));
  return next.changes.flatMap(({ text, ...change }) => {
    if (change.path === kRoster) return [{ ...change, text: rosterText(next, moves) }];
    if (!empty.has(change.path)) return [{ ...change, ...(text === undefined ? {} : { text }) }];
    return change.instead_of === undefined ? [] : [change];
  });
}
