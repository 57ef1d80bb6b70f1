// What of a try can be kept for the squad: drills that are to be in or left out, the order, the minutes of that slot of the
// week, and pairs that are kept apart. Players who come on one evening cannot.
import { weekdayOf } from "../week/days.ts";
import type { ToKeep } from "./keep_standing.ts";
import { orderOf, ownRoutine, type ClubDocument } from "./own_routine.ts";
import { orderWith, type Placed } from "./places_in_order.ts";
import { keyOfSlot, standingOf, type Content, type Lock } from "./standing.ts";
import type { PocketEvening, Tried } from "./tried.ts";

const all = <Value>(keys: string[], value: Value): Record<string, Value> => Object.fromEntries(keys.map((key) => [key, value]));

// The house routine's lines in the order that was tried. Drills of tonight that it has not are passed over.
function routineAs(order: string[], routine: string[], placed: (ids: string[]) => Placed[]): string[] {
  return orderWith(placed(routine), placed(order.filter((drill) => routine.includes(drill))));
}

// books: the club's documents; shipped: the catalogue's routines. Neither is there while it is read.
export function toKeep(squad: string, evening: PocketEvening, tried: Tried, placed: (ids: string[]) => Placed[], books?: ClubDocument[], shipped: Content[] = []): ToKeep {
  const locks = { ...all<Lock>(tried.pins, "pin"), ...all<Lock>(tried.bans, "ban") };
  const slot = keyOfSlot(weekdayOf(evening.day), evening.start);
  const squads = books?.find(({ path }) => path === `squads/${squad}.toml`)?.content as Content | undefined;
  const of_the_week = standingOf(squads ?? {}, { minutes: { [slot]: 0 } }).minutes?.[slot];
  const house = tried.order && books ? orderOf(squad, books, shipped) : undefined;
  const order = house && tried.order ? routineAs(tried.order, house.drills, placed) : undefined;
  return {
    ...(Object.keys(locks).length > 0 ? { locks } : {}),
    ...(tried.minutes !== undefined && of_the_week !== undefined && of_the_week !== tried.minutes ? { minutes: { [slot]: tried.minutes } } : {}),
    ...(tried.apart.length > 0 ? { apart: all(tried.apart, true) } : {}),
    ...(order && order.join() !== house?.drills.join() ? { order: { routine: ownRoutine(squad), drills: order } } : {}),
  };
}
