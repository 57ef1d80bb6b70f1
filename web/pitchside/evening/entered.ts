// What was entered, by its ids: an entry of the ledger is never changed, a later one names it and stands in its place
// (docs/formats/ledger.md).
import type { Entry, NewEntry } from "../keep/entry.ts";
import type { Entered, EveningState, Mark } from "./evening_state.ts";

function saidBy(entry: NewEntry): string {
  const { corrects: _, ...content } = entry;
  return JSON.stringify(content);
}

function noteOf(entry: Entry): Entered | undefined {
  const { id, sequence: _, device_time: __, ...made } = entry;
  const said = saidBy(made);
  switch (entry.kind) {
    case "attendance":
    case "wrap-up":
      return { id, kind: entry.kind, about: "", said };
    case "drill-marked":
      return { id, kind: entry.kind, about: entry.drill, mark: entry.mark, said };
    case "hurt":
    case "soreness":
      return { id, kind: entry.kind, about: entry.player, said };
    default:
      return undefined;
  }
}

export function withIds(state: EveningState, entries: Entry[]): EveningState {
  const before = state.entered ?? [];
  const fresh = entries.map(noteOf).filter((note) => note !== undefined && !before.some(({ id }) => id === note.id));
  return fresh.length === 0 ? state : { ...state, entered: [...before, ...(fresh as Entered[])] };
}

// The latest that stands, of a kind, a player or drill, and a mark.
export function standing(state: EveningState, kind: Entered["kind"], about = "", mark?: Mark): Entered | undefined {
  const found = (state.entered ?? []).filter(
    (each) => each.kind === kind && each.about === about && each.mark === mark && !each.taken_back,
  );
  return found[found.length - 1];
}

export function takenBack(state: EveningState, id: string): EveningState {
  const entered = (state.entered ?? []).map((each) => (each.id === id ? { ...each, taken_back: true } : each));
  return { ...state, entered };
}

// The entry, as a correction where one of its kind stands; nothing where that one says the same.
export function correcting(state: EveningState, entry: NewEntry): NewEntry | undefined {
  const older = entry.kind === "attendance" || entry.kind === "wrap-up" ? standing(state, entry.kind) : undefined;
  if (!older) return entry;
  return older.said === saidBy(entry) ? undefined : { ...entry, corrects: older.id };
}
