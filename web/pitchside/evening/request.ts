// The door's request from the package's documents and tonight's facts (docs/formats/door.md, squad.md).
import type { Evening, EveningPackage } from "../package/evening_package.ts";
import type { DoorTable, DoorValue } from "../../shared/engine/door_value.ts";
import type { DoorRequest } from "../../shared/engine/engine.ts";
import type { EveningState, Facts, Sore } from "./evening_state.ts";
import { barredFor } from "./barred.ts";
import { takesPart } from "./sore.ts";
import { timeAfter } from "../../shared/evening/time_after.ts";

export const kLeastMinutes = 5; // the door's own bounds of a slot and a turnout
export const kMostMinutes = 60;
const kLeastTurnout = 2;
const kMostTurnout = 40;
const kSwapsOnly = "swaps only, stop if it hurts"; // as catalogue/care/pain.toml says it

export const between = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

export function table(value: DoorValue | undefined): DoorTable {
  return value !== null && typeof value === "object" && !Array.isArray(value) ? value : {};
}

function texts(value: DoorValue | undefined): string[] {
  return Array.isArray(value) ? value.filter((each): each is string => typeof each === "string") : [];
}

const together = (one: string[], other: string[]): string[] => [...new Set([...one, ...other])];

// Fewer minutes are the end of the slot: what was lost was lost at its start.
function slotOf(squad: DoorTable, evening: Evening, minutes: number | undefined): DoorTable {
  const slot: DoorTable = { ...table(squad["slot"]), date: evening.day };
  if (minutes === undefined) return slot;
  const left = between(minutes, kLeastMinutes, kMostMinutes);
  const start = timeAfter(evening.start, Math.max(0, evening.minutes - left));
  return { ...slot, minutes: left, start: `${start}:00` };
}

function tonightOf(squad: DoorTable, facts: Facts, out: string[]): DoorTable {
  const tonight: DoorTable = { ...table(squad["tonight"]) };
  const known = texts(tonight["away"]);
  const absent = together(facts.away, out);
  tonight["away"] = absent;
  tonight["bans"] = together(texts(tonight["bans"]), facts.bans);
  if (facts.turnout !== undefined) tonight["turnout"] = between(facts.turnout, kLeastTurnout, kMostTurnout);
  else if (absent.length !== known.length || absent.some((id) => !known.includes(id))) delete tonight["turnout"];
  const most = facts.turnout === undefined ? kMostTurnout : between(facts.turnout, kLeastTurnout, kMostTurnout) - 1;
  tonight["late"] = between(facts.late, 0, most);
  const pins = pinsOf(tonight, facts);
  if (pins.length > 0) tonight["pins"] = pins;
  else delete tonight["pins"];
  return tonight;
}

// The lead's pins stay, but for a drill that the coach leaves out tonight.
function pinsOf(tonight: DoorTable, facts: Facts): DoorTable[] {
  const known = Array.isArray(tonight["pins"]) ? tonight["pins"].map(table) : [];
  const stay = known.filter((pin) => !facts.bans.includes(String(pin["drill"])));
  const more = facts.pins.filter((drill) => !stay.some((pin) => pin["drill"] === drill));
  return [...stay, ...more.map((drill) => ({ drill }))];
}

function stripOf(strip: DoorTable, facts: Facts): DoorTable {
  const changed: DoorTable = { ...strip };
  if (facts.surface) changed["surface"] = facts.surface;
  if (facts.lanes !== undefined) changed["lanes"] = between(facts.lanes, 1, 12);
  if (facts.length_metres !== undefined) {
    const length = between(facts.length_metres, 5, 60);
    changed["lane_length_metres"] = length;
    const spacing = changed["cone_spacing_metres"];
    if (typeof spacing === "number" && spacing > length) changed["cone_spacing_metres"] = length;
  }
  return changed;
}

function kitOf(squad: DoorTable, facts: Facts): DoorTable {
  const kit: DoorTable = { ...table(squad["kit"]) };
  for (const missing of facts.missing) kit[missing] = 0;
  return kit;
}

function heldBack(sore: Sore): DoorTable {
  const row: DoorTable = { player: sore.player, allowed: "light", instruction: kSwapsOnly };
  if (sore.place) row["areas"] = [sore.place];
  return row;
}

// What holds players back travels as it came, with a row more for who is sore tonight: by the place where the lead's
// own restrictions stand, by the names of what is barred where only permissions do.
function withSore(documents: Evening["documents"], facts: Facts, catalogue: DoorTable): { part: DoorTable; out: string[] } {
  const loose = documents as Partial<Evening["documents"]> & { restrictions?: DoorTable };
  const out = facts.sore.filter((sore) => takesPart(sore) === "sits out").map((sore) => sore.player);
  const swapping = facts.sore.filter((sore) => takesPart(sore) === "swaps");
  const more = (document: DoorTable, key: string, rows: DoorTable[]): DoorTable => {
    const there = document[key];
    return { ...document, [key]: [...(Array.isArray(there) ? there : []), ...rows] };
  };
  if (loose.restrictions) {
    return { part: { restrictions: more(loose.restrictions, "restriction", swapping.map(heldBack)) }, out };
  }
  if (!loose.permissions) return { part: {}, out };
  const barred = swapping.map((sore): DoorTable => {
    return { player: sore.player, instruction: kSwapsOnly, bars: barredFor(catalogue, sore.place) };
  });
  return { part: { permissions: more(loose.permissions, "permission", barred) }, out };
}

export function awayAsKnown(evening: Evening): string[] {
  return texts(table(evening.documents.squad["tonight"])["away"]);
}

export function lateAsKnown(evening: Evening): number {
  const late = table(evening.documents.squad["tonight"])["late"];
  return typeof late === "number" ? late : 0;
}

export function eveningOf(pack: EveningPackage, state: EveningState): Evening | undefined {
  return pack.evenings.find((evening) => evening.day === state.day && evening.start === state.start);
}

export function requestFor<Kind extends "plan" | "slip">(
  kind: Kind,
  pack: EveningPackage,
  state: EveningState,
): (DoorRequest & { request: Kind }) | undefined {
  const evening = eveningOf(pack, state);
  if (!evening) return undefined;
  const { routine, strip, squad, roster } = evening.documents;
  const { part, out } = withSore(evening.documents, state.facts, pack.catalogue);
  return {
    request: kind,
    catalogue: pack.catalogue,
    routine,
    strip: stripOf(strip, state.facts),
    squad: {
      ...squad,
      slot: slotOf(squad, evening, state.facts.minutes),
      tonight: tonightOf(squad, state.facts, together(out, state.hurt)),
      kit: kitOf(squad, state.facts),
    },
    ...part,
    roster,
  };
}
