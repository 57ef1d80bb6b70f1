// Squads that want more of a place at one time than there is: who comes later in the list gets what is left, or none
// (docs/formats/club.md, 'Strips and kit'). Told while the evenings are typed, before any plan is asked for.
import { type Content, contentOf } from "./club_draft.ts";
import { rowsOf } from "./rows.tsx";

interface Wish {
  squad: string; // as people read it
  strip: string; // file
  weekday: string;
  from: number; // minutes of the day
  to: number;
  lanes: number;
}
export interface Clash {
  place: string;
  weekday: string;
  start: string;
  squads: string[];
}

const minutesOf = (start: unknown): number => {
  const [hours = 0, minutes = 0] = String(start ?? "").split(":").map(Number);
  return 60 * hours + minutes;
};

const fileOf = (strip: unknown): string => String(strip ?? "").replace("../", "");
const lanesOf = (strip: string): number => Number(contentOf(strip)?.lanes ?? 0);

function wishesOf(squad: Content): Wish[] {
  const strip = fileOf(squad.strip);
  if (strip === "" || !contentOf(strip)) return [];
  // An evening elsewhere names its strip by id, which these forms do not write.
  return rowsOf(squad.week)
    .filter((evening) => evening.strip === undefined)
    .map((evening) => {
      const from = minutesOf(evening.start);
      const lanes = typeof evening.lanes === "number" ? evening.lanes : lanesOf(strip);
      return { squad: String(squad.name ?? ""), strip, weekday: String(evening.weekday), from, to: from + Number(evening.minutes ?? 0), lanes };
    });
}

export function clashesOf(squads: Content[]): Clash[] {
  const wishes = squads.flatMap(wishesOf);
  const found = new Map<string, Clash>();
  for (const wish of wishes) {
    const others = wishes.filter((one) => one.strip === wish.strip && one.weekday === wish.weekday && one.from < wish.to && wish.from < one.to);
    const wanted = others.reduce((sum, { lanes }) => sum + lanes, 0);
    if (others.length < 2 || wanted <= lanesOf(wish.strip)) continue;
    const first = others.reduce((one, other) => (other.from < one.from ? other : one));
    const key = `${wish.strip} ${wish.weekday} ${first.from}`;
    const names = [...new Set([...(found.get(key)?.squads ?? []), ...others.map(({ squad }) => squad)])];
    const start = `${String(Math.floor(first.from / 60)).padStart(2, "0")}:${String(first.from % 60).padStart(2, "0")}`;
    found.set(key, { place: String(contentOf(wish.strip)?.name ?? ""), weekday: wish.weekday, start, squads: names });
  }
  return [...found.values()];
}
