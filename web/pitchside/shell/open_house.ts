// From what is kept to an evening on the pitch: which there are, which is under way, and opening one.
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { openEngine, type Engine } from "../../shared/engine/engine.ts";
import { dayOf } from "../evening/day.ts";
import { withIds } from "../evening/entered.ts";
import type { EveningState } from "../evening/evening_state.ts";
import type { Entry } from "../keep/entry.ts";
import type { Keep } from "../keep/keep.ts";
import type { Refusal } from "../keep/step.ts";
import { type Overlay, openPitch, type Pitch } from "../screens/pitch.ts";
import { firstPreferences, type Preferences } from "../screens/preferences.ts";
import type { Sync } from "../sync/sync.ts";
import { eveningsOf, isUnderWay, stateOf, type HeldEvening } from "./evenings.ts";
import { door, engineWorker, spanishDrills } from "./places.ts";

const kPreferences = "lanework-preferences"; // nothing of people: how the phone is set

export function keptPreferences(): Preferences {
  const first = firstPreferences(navigator.languages);
  try {
    return { ...first, ...(JSON.parse(localStorage.getItem(kPreferences) ?? "{}") as Partial<Preferences>) };
  } catch {
    return first;
  }
}

export interface House {
  evenings: ReadonlySignal<HeldEvening[]>;
  finished: ReadonlySignal<ReadonlySet<string>>; // keys of today's that were wrapped up
  locked: ReadonlySignal<boolean>; // names are hidden until the club was reached again
  pitch: ReadonlySignal<Pitch | undefined>; // of the evening that is open
  refused: ReadonlySignal<Refusal | undefined>; // why the last thing entered was not kept
  look(): Promise<void>; // anew at what is kept
  resume(): Promise<void>; // opens what is under way, where something is
  open(evening: HeldEvening): Promise<void>;
  close(): void;
  hide(): void; // nothing of people stays on the screen or behind it; what was open is opened again by resume
}

export function openHouse(keep: Keep, sync: Sync): House {
  const evenings = signal<HeldEvening[]>([]);
  const finished = signal<ReadonlySet<string>>(new Set());
  const locked = signal(false);
  const pitch = signal<Pitch | undefined>(undefined);
  const refused = signal<Refusal | undefined>(undefined);
  let engine: Engine | undefined;
  let opened: string | undefined; // the key of the evening that is open
  let hidden: { key: string; overlay: Overlay } | undefined;

  let turn = 0; // counts openings and closings: who took long over an older one leaves it

  async function look(): Promise<void> {
    const held = await keep.packages();
    if (held.length > 0 && !keep.lock.people) return; // locked meanwhile
    const today = dayOf(new Date());
    const listed = eveningsOf(held, today);
    const kept = await keep.evenings(listed.filter(({ evening }) => evening.day === today).map(({ key }) => key));
    finished.value = new Set([...kept].filter(([, state]) => (state as EveningState).screen === "finished").map(([key]) => key));
    evenings.value = listed;
    locked.value = held.some((one) => one.locked);
  }

  async function open(evening: HeldEvening): Promise<void> {
    const mine = ++turn;
    const state: EveningState = stateOf(evening, await keep.evening(evening.key));
    if (mine !== turn || !keep.lock.people) return;
    engine ??= openEngine({ worker: engineWorker, door });
    opened = evening.key;
    pitch.value = openPitch({
      pack: evening.held.package,
      engine,
      evening: state,
      preferences: keptPreferences(),
      renderings: { es: spanishDrills },
      waiting: computed(() => keep.books.value.waiting),
      async keep(after, entries) {
        // With their ids in the same transaction: what was entered can be taken back after a crash too.
        const kept = await keep.step(evening.key, (made: Entry[]) => withIds(after, made), entries);
        refused.value = kept.kept ? undefined : kept.why;
        if (kept.kept && entries.length > 0) void sync.sendNow();
        return kept.kept ? kept.entries : [];
      },
      changeCode: (old, fresh) => keep.lock.change(old, fresh),
      keepPreferences(preferences) {
        localStorage.setItem(kPreferences, JSON.stringify(preferences));
      },
    });
  }

  function close(): void {
    if (opened !== undefined && pitch.value) {
      const others = [...finished.value].filter((key) => key !== opened);
      finished.value = new Set(pitch.value.evening.value.screen === "finished" ? [...others, opened] : others);
    }
    pitch.value?.close();
    pitch.value = undefined;
    opened = undefined;
  }

  // Opens what was open when it was hidden; else what is under way.
  async function resume(): Promise<void> {
    const mine = turn;
    const before = hidden;
    hidden = undefined;
    const left = evenings.value.find(({ key }) => key === before?.key);
    if (before && left) {
      await open(left);
      if (pitch.value && opened === before.key) pitch.value.overlay.value = before.overlay;
      return;
    }
    const listed = evenings.value;
    const kept = await keep.evenings(listed.map(({ key }) => key));
    if (mine !== turn) return; // somebody has opened one by hand
    const under_way = listed.find((evening) => kept.has(evening.key) && isUnderWay(stateOf(evening, kept.get(evening.key))));
    if (under_way) await open(under_way);
  }

  return {
    evenings,
    finished,
    locked,
    pitch,
    refused,
    look,
    resume,
    open,
    close,
    hide() {
      if (pitch.value && opened !== undefined) hidden = { key: opened, overlay: pitch.value.overlay.value };
      close();
      engine?.close();
      engine = undefined;
      turn++;
      evenings.value = [];
    },
  };
}
