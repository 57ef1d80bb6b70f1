// Which rows of a list are players that the club knows already: they keep their ids, and with these everything that was
// entered of them. A list without ids would number its rows, and a child would get another one's history.
import { type Column, squadsOf } from "./sheet.ts";

export interface Known {
  player: string; // id
  name: string;
  squads: string[]; // as the list of players names them
}
export type How = "stated" | "known" | "new" | "unsure";
export interface Who {
  id: string;
  how: How;
  candidates: Known[]; // of one who is unsure
}

// Without case, accents and the order of the words: 'Marsh, Ada' is Ada Marsh.
export function keyOf(name: string): string {
  const plain = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.split(/[\s,;.]+/).filter((word) => word !== "").sort().join(" ");
}

export function nameIn(cells: string[], columns: (Column | "")[]): string {
  return columns.flatMap((column, at) => (column === "name" || column === "first_name" || column === "last_name" ? [cells[at] ?? ""] : [])).join(" ").trim();
}

// chosen: what the lead said of a row that is unsure, an id or "" for somebody new. fresh: an id for each row, should it be new.
export function whoIsWho(rows: string[][], columns: (Column | "")[], known: Known[], fresh: string[], chosen: Record<number, string>): Who[] {
  const ids = columns.indexOf("id");
  if (ids >= 0) return rows.map((cells) => ({ id: cells[ids] ?? "", how: "stated", candidates: [] }));
  const by_key = new Map<string, Known[]>();
  for (const one of known) by_key.set(keyOf(one.name), [...(by_key.get(keyOf(one.name)) ?? []), one]);
  const keys = rows.map((cells) => keyOf(nameIn(cells, columns)));
  const times = new Map<string, number>();
  for (const key of keys) times.set(key, (times.get(key) ?? 0) + 1);
  // Of one name in several squads: who is of the same squad as before, where that is one alone.
  const squads = rows.map((cells) => squadsOf(cells[columns.indexOf("squad")] ?? ""));
  const ofSquad = (row: number): Known[] => (by_key.get(keys[row] ?? "") ?? []).filter((one) => one.squads.some((squad) => squads[row]?.includes(squad)));
  const rowsLike = (row: number): number => keys.filter((key, other) => key === keys[row] && squads[other]?.some((squad) => squads[row]?.includes(squad))).length;
  return keys.map((key, row) => {
    const candidates = key === "" ? [] : (by_key.get(key) ?? []);
    const own = fresh[row] ?? "";
    const [only] = candidates;
    if (!only) return { id: own, how: "new", candidates: [] };
    if (candidates.length === 1 && times.get(key) === 1) return { id: only.player, how: "known", candidates };
    const [same] = ofSquad(row);
    if (same && ofSquad(row).length === 1 && rowsLike(row) === 1) return { id: same.player, how: "known", candidates };
    const said = chosen[row];
    return { id: said === undefined || said === "" ? own : said, how: "unsure", candidates };
  });
}

export function leavers(who: Who[], known: Known[]): Known[] {
  const there = new Set(who.map(({ id }) => id));
  return known.filter(({ player }) => !there.has(player));
}

const kLetters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"; // none that are taken for another
const kLength = 6; // a thousand million: none twice, and never one of somebody who left

// The first list of a club is numbered; whoever comes later has an id that nobody ever had.
export function freshIds(count: number, first: boolean): string[] {
  if (first) return Array.from({ length: count }, (_, at) => `P${String(at + 1).padStart(count > 99 ? 3 : 2, "0")}`);
  return Array.from({ length: count }, () => `P-${[...crypto.getRandomValues(new Uint8Array(kLength))].map((byte) => kLetters[byte % kLetters.length]).join("")}`);
}
