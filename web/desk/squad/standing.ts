// The standing part of a squad's document that the desk changes (docs/formats/club.md): what must be in, what must not, the
// rungs that were confirmed, the minutes of a slot of the week, and who is kept apart in pairs. A change names its keys
// alone, so that two leads' changes can be put together.
export type Lock = "pin" | "ban" | "";
export interface Rung {
  rung: string;
  from: string; // holds from the first week that begins on this day or later
}
export interface Standing {
  locks: Record<string, Lock>; // by drill
  rungs: Record<string, Rung | undefined>; // by drill
  minutes: Record<string, number | undefined>; // by slot of the week, 'tuesday 18:00'; a slot that there is not cannot be set
  apart: Record<string, boolean>; // by pair, 'Q03 Q11', the lesser id first
}
export type Part = keyof Standing;
export type Wanted = Partial<Standing>;
export type Content = Record<string, unknown>;

const kParts: Part[] = ["locks", "rungs", "minutes", "apart"];

const tableAt = (content: Content, key: string): Content => (typeof content[key] === "object" && content[key] !== null && !Array.isArray(content[key]) ? (content[key] as Content) : {});
const rowsAt = (content: Content, key: string): Content[] => (Array.isArray(content[key]) ? (content[key] as Content[]) : []);

// With that key, or without it where nothing stands there.
function withKey(content: Content, key: string, value: Content | unknown[]): Content {
  const { [key]: _, ...without } = content;
  return (Array.isArray(value) ? value : Object.keys(value)).length > 0 ? { ...without, [key]: value } : without;
}

export const keyOfPair = (one: string, other: string): string => [one, other].sort().join(" ");
export const pairOfKey = (key: string): [string, string] => key.split(" ") as [string, string];

const kWeekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

// weekday: 1 is Monday.
export const keyOfSlot = (weekday: number, start: string): string => `${kWeekdays[weekday - 1]} ${start}`;
export const weekdayOfSlot = (key: string): number => kWeekdays.indexOf(key.split(" ")[0] ?? "") + 1;
const slotOf = (row: Content): string => `${String(row["weekday"])} ${String(row["start"]).slice(0, 5)}`;

function lockOf(content: Content, drill: string): Lock {
  const locks = tableAt(content, "locks");
  if (rowsAt(locks, "pins").some((pin) => pin["drill"] === drill)) return "pin";
  return Array.isArray(locks["bans"]) && locks["bans"].includes(drill) ? "ban" : "";
}

function rungOf(content: Content, drill: string): Rung | undefined {
  const row = rowsAt(content, "rung").find((each) => each["drill"] === drill);
  return row ? { rung: String(row["rung"]), from: String(row["from"]) } : undefined;
}

function minutesOf(content: Content, slot: string): number | undefined {
  const minutes = rowsAt(content, "week").find((row) => slotOf(row) === slot)?.["minutes"];
  return typeof minutes === "number" ? minutes : undefined;
}

export function keptApart(content: Content): string[] {
  const pairs = tableAt(content, "partners")["forbidden"];
  return Array.isArray(pairs) ? pairs.map((pair: string[]) => keyOfPair(String(pair[0]), String(pair[1]))) : [];
}

const read: { [Name in Part]: (content: Content, key: string) => Standing[Name][string] } = {
  locks: lockOf,
  rungs: rungOf,
  minutes: minutesOf,
  apart: (content, pair) => keptApart(content).includes(pair),
};

// What the document says of the keys that a change names: what takes that change back.
export function standingOf(content: Content, wanted: Wanted): Wanted {
  const parts = kParts.filter((part) => wanted[part] !== undefined);
  return Object.fromEntries(parts.map((part) => [part, Object.fromEntries(Object.keys(wanted[part] ?? {}).map((key) => [key, read[part](content, key)]))]));
}

function withLocks(content: Content, wanted: Standing["locks"]): Content {
  const locks = tableAt(content, "locks");
  const others = (drill: unknown) => !Object.hasOwn(wanted, String(drill));
  const named = (lock: Lock) => Object.keys(wanted).filter((drill) => wanted[drill] === lock);
  // A pin that stands keeps what else it says, such as its rung.
  const stands = (drill: string) => rowsAt(locks, "pins").find((pin) => pin["drill"] === drill) ?? { drill };
  const pins = [...rowsAt(locks, "pins").filter((pin) => others(pin["drill"])), ...named("pin").map(stands)];
  const bans = [...(Array.isArray(locks["bans"]) ? locks["bans"] : []).filter(others), ...named("ban")];
  return withKey(content, "locks", withKey(withKey(locks, "pins", pins), "bans", bans));
}

function withRungs(content: Content, wanted: Standing["rungs"]): Content {
  const others = rowsAt(content, "rung").filter((row) => !Object.hasOwn(wanted, String(row["drill"])));
  const own = Object.entries(wanted).flatMap(([drill, rung]) => (rung ? [{ drill, ...rung }] : []));
  return withKey(content, "rung", [...others, ...own]);
}

function withMinutes(content: Content, wanted: Standing["minutes"]): Content {
  const week = rowsAt(content, "week").map((row) => {
    const minutes = wanted[slotOf(row)];
    return minutes === undefined ? row : { ...row, minutes };
  });
  return withKey(content, "week", week);
}

// The other pairs stay as they stand, in their order.
function withApart(content: Content, wanted: Standing["apart"]): Content {
  const pairs = keptApart(content).filter((pair) => wanted[pair] !== false);
  const more = Object.keys(wanted).filter((pair) => wanted[pair] && !pairs.includes(pair));
  return withKey(content, "partners", withKey(tableAt(content, "partners"), "forbidden", [...pairs, ...more].map(pairOfKey)));
}

const named = (part: Record<string, unknown> | undefined): boolean => Object.keys(part ?? {}).length > 0;

export function withStanding(content: Content, { locks, rungs, minutes, apart }: Wanted): Content {
  let after = content;
  if (locks && named(locks)) after = withLocks(after, locks);
  if (rungs && named(rungs)) after = withRungs(after, rungs);
  if (minutes && named(minutes)) after = withMinutes(after, minutes);
  if (apart && named(apart)) after = withApart(after, apart);
  return after;
}

export const same = (one: unknown, other: unknown): boolean => JSON.stringify(one ?? null) === JSON.stringify(other ?? null);

export interface Contested {
  part: Part;
  key: string;
}

// Keys of the change of which somebody else meanwhile wrote something that is neither as it was nor as it is wanted.
export function contested(wanted: Wanted, before: Wanted, now: Wanted): Contested[] {
  return kParts.flatMap((part) =>
    Object.keys(wanted[part] ?? {})
      .filter((key) => !same(now[part]?.[key], before[part]?.[key]) && !same(now[part]?.[key], wanted[part]?.[key]))
      .map((key) => ({ part, key })),
  );
}
