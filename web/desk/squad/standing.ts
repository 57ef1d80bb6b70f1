// The standing part of a squad's document that the desk changes (docs/formats/club.md): what must be in, what must not, and
// the rungs that were confirmed. A change names its drills alone, so that two leads' changes can be put together.
export type Lock = "pin" | "ban" | "";
export interface Rung {
  rung: string;
  from: string; // holds from the first week that begins on this day or later
}
export interface Standing {
  locks: Record<string, Lock>; // by drill
  rungs: Record<string, Rung | undefined>;
}
type Content = Record<string, unknown>;

const tableAt = (content: Content, key: string): Content => (typeof content[key] === "object" && content[key] !== null && !Array.isArray(content[key]) ? (content[key] as Content) : {});
const rowsAt = (content: Content, key: string): Content[] => (Array.isArray(content[key]) ? (content[key] as Content[]) : []);

function lockOf(content: Content, drill: string): Lock {
  const locks = tableAt(content, "locks");
  if (rowsAt(locks, "pins").some((pin) => pin["drill"] === drill)) return "pin";
  return Array.isArray(locks["bans"]) && locks["bans"].includes(drill) ? "ban" : "";
}

function rungOf(content: Content, drill: string): Rung | undefined {
  const row = rowsAt(content, "rung").find((each) => each["drill"] === drill);
  return row ? { rung: String(row["rung"]), from: String(row["from"]) } : undefined;
}

// What the document says of the drills that a change names: what takes that change back.
export function standingOf(content: Content, { locks, rungs }: Standing): Standing {
  return {
    locks: Object.fromEntries(Object.keys(locks).map((drill) => [drill, lockOf(content, drill)])),
    rungs: Object.fromEntries(Object.keys(rungs).map((drill) => [drill, rungOf(content, drill)])),
  };
}

function withLocks(content: Content, wanted: Record<string, Lock>): Content {
  if (Object.keys(wanted).length === 0) return content;
  const locks = tableAt(content, "locks");
  const others = (drill: unknown) => !Object.hasOwn(wanted, String(drill));
  const named = (lock: Lock) => Object.keys(wanted).filter((drill) => wanted[drill] === lock);
  // A pin that stands keeps what else it says, such as its rung.
  const stands = (drill: string) => rowsAt(locks, "pins").find((pin) => pin["drill"] === drill) ?? { drill };
  const pins = [...rowsAt(locks, "pins").filter((pin) => others(pin["drill"])), ...named("pin").map(stands)];
  const bans = [...(Array.isArray(locks["bans"]) ? locks["bans"] : []).filter(others), ...named("ban")];
  const { pins: _, bans: __, ...rest } = locks;
  const own = { ...rest, ...(pins.length > 0 ? { pins } : {}), ...(bans.length > 0 ? { bans } : {}) };
  const { locks: ___, ...without } = content;
  return Object.keys(own).length > 0 ? { ...without, locks: own } : without;
}

function withRungs(content: Content, wanted: Record<string, Rung | undefined>): Content {
  if (Object.keys(wanted).length === 0) return content;
  const others = rowsAt(content, "rung").filter((row) => !Object.hasOwn(wanted, String(row["drill"])));
  const own = Object.entries(wanted).flatMap(([drill, rung]) => (rung ? [{ drill, ...rung }] : []));
  const { rung: _, ...without } = content;
  const rows = [...others, ...own];
  return rows.length > 0 ? { ...without, rung: rows } : without;
}

export function withStanding(content: Content, { locks, rungs }: Standing): Content {
  return withRungs(withLocks(content, locks), rungs);
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one ?? null) === JSON.stringify(other ?? null);

// Drills of the change of which somebody else meanwhile wrote something that is neither as it was nor as it is wanted.
export function contested(wanted: Standing, before: Standing, now: Standing): string[] {
  const differs = (part: "locks" | "rungs") =>
    Object.keys(wanted[part]).filter((drill) => !same(now[part][drill], before[part][drill]) && !same(now[part][drill], wanted[part][drill]));
  return [...new Set([...differs("locks"), ...differs("rungs")])];
}
