// What the lead tries on one evening, each try undoable: the order, what must be in it, what must not, minutes and turnout.
import { timeAfter } from "../../shared/evening/time_after.ts";
import type { DoorTable, DoorValue } from "../../shared/engine/door_value.ts";
import type { DoorRequest } from "../../shared/engine/engine.ts";
import { keyOfPair } from "./standing.ts";

export interface Tried {
  order?: string[]; // of the routine's drills, by id; absent: as the routine has them
  pins: string[];
  bans: string[];
  apart: string[]; // pairs that are not to stand together, 'Q03 Q11' (standing.ts)
  minutes?: number;
  turnout?: number;
}

export const kNothingTried: Tried = { pins: [], bans: [], apart: [] };

export interface Tries {
  past: Tried[];
  now: Tried;
  undone: Tried[];
}

export const kFirstTries: Tries = { past: [], now: kNothingTried, undone: [] };

export function tryOn(tries: Tries, more: Partial<Tried>): Tries {
  return { past: [...tries.past, tries.now], now: { ...tries.now, ...more }, undone: [] };
}

export function undo(tries: Tries): Tries {
  const before = tries.past.at(-1);
  return before ? { past: tries.past.slice(0, -1), now: before, undone: [tries.now, ...tries.undone] } : tries;
}

export function redo(tries: Tries): Tries {
  const [after, ...undone] = tries.undone;
  return after ? { past: [...tries.past, tries.now], now: after, undone } : tries;
}

const without = (list: string[], drill: string): string[] => list.filter((each) => each !== drill);

export function keptApart(tried: Tried, pair: string, on: boolean): Partial<Tried> {
  return { apart: [...without(tried.apart, pair), ...(on ? [pair] : [])] };
}

// A drill is pinned, banned, or neither: the one takes the other away.
export function pinned(tried: Tried, drill: string, on: boolean): Partial<Tried> {
  return { pins: [...without(tried.pins, drill), ...(on ? [drill] : [])], bans: without(tried.bans, drill) };
}

export function banned(tried: Tried, drill: string, on: boolean): Partial<Tried> {
  return { bans: [...without(tried.bans, drill), ...(on ? [drill] : [])], pins: without(tried.pins, drill) };
}

export interface EveningDocuments {
  routine: DoorTable;
  strip: DoorTable;
  squad: DoorTable;
  permissions: DoorTable;
  roster: DoorTable[];
}

export interface PocketEvening {
  day: string;
  start: string;
  minutes: number;
  days_to_match?: number;
  match_day: boolean;
  elsewhere: boolean;
  strip: string;
  documents: EveningDocuments;
}

// The learned pace of the squad: above 1 is slower; absent where nothing was learned yet.
export function paceOf({ documents }: PocketEvening): number | undefined {
  const clock = documents.squad["clock"] as DoorTable | undefined;
  return typeof clock?.["pace"] === "number" ? clock["pace"] : undefined;
}

const table = (value: DoorValue | undefined): DoorTable => (value !== null && typeof value === "object" && !Array.isArray(value) ? value : {});
const rows = (value: DoorValue | undefined): DoorTable[] => (Array.isArray(value) ? value.map(table) : []);
const idOf = (line: DoorTable): string => String(line["id"]);

export function orderOfRoutine(evening: PocketEvening): string[] {
  return rows(evening.documents.routine["drill"]).map(idOf);
}

function inOrder(routine: DoorTable, order: string[] | undefined): DoorTable {
  if (!order) return routine;
  const place = (line: DoorTable) => (order.includes(idOf(line)) ? order.indexOf(idOf(line)) : order.length);
  return { ...routine, drill: [...rows(routine["drill"])].sort((one, other) => place(one) - place(other)) };
}

// Fewer or more minutes move the end of the slot: a desk plans ahead, nothing of the slot is over.
function squadOf(evening: PocketEvening, tried: Tried): DoorTable {
  const squad: DoorTable = { ...evening.documents.squad };
  const tonight: DoorTable = { ...table(squad["tonight"]) };
  const bans = (Array.isArray(tonight["bans"]) ? tonight["bans"] : []).map(String);
  const pins = rows(tonight["pins"]).filter((pin) => !tried.bans.includes(String(pin["drill"])));
  const more = tried.pins.filter((drill) => !pins.some((pin) => pin["drill"] === drill)).map((drill) => ({ drill }));
  tonight["bans"] = [...new Set([...bans.filter((drill) => !tried.pins.includes(drill)), ...tried.bans])];
  tonight["pins"] = [...pins, ...more];
  if (tried.turnout !== undefined) {
    tonight["turnout"] = tried.turnout;
    tonight["late"] = Math.min(Number(tonight["late"] ?? 0), tried.turnout - 1); // somebody is there at the start
  }
  squad["tonight"] = tonight;
  if (tried.minutes !== undefined) squad["slot"] = { ...table(squad["slot"]), minutes: tried.minutes };
  return squad;
}

// Whoever is not named beside a player may not stand with them (docs/formats/permissions.md).
function permissionsOf({ documents: { permissions } }: PocketEvening, { apart }: Tried): DoorTable {
  if (apart.length === 0) return permissions;
  const without_kept = (player: string, others: DoorValue | undefined) => (Array.isArray(others) ? others.map(String) : []).filter((other) => !apart.includes(keyOfPair(player, other)));
  const partners = rows(permissions["partners"]).map((row) => {
    const player = String(row["player"]);
    const less = { ...row, others: without_kept(player, row["others"]) };
    return row["without_contact"] === undefined ? less : { ...less, without_contact: without_kept(player, row["without_contact"]) };
  });
  return { ...permissions, partners };
}

export function requestOf(evening: PocketEvening, catalogue: DoorTable, tried: Tried, request: "plan" | "slip" = "plan"): DoorRequest {
  const { documents } = evening;
  return {
    request,
    catalogue,
    ...documents,
    routine: inOrder(documents.routine, tried.order),
    squad: squadOf(evening, tried),
    permissions: permissionsOf(evening, tried),
  };
}

export const endOf = (evening: PocketEvening, tried: Tried): string => timeAfter(evening.start, tried.minutes ?? evening.minutes);
