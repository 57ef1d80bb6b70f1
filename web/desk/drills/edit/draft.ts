// The drill being written: what it is now, what can be undone, and what the checker says of it. Kept in this tab until it
// is left or downloaded, so that loading the page again loses nothing; a drill is nobody's data.
import { signal, type Signal } from "@preact/signals";
import type { Fault } from "../../../shared/engine/answers.ts";
import { openEngine, type Engine } from "../../../shared/engine/engine.ts";
import { door, engineWorker } from "../../shell/places.ts";
import type { CatalogueDocument, DrillDocument } from "../drill_document.ts";
import { checkRequest, faultsOfDrill, readCatalogue } from "./check.ts";
import { beginning, done, redone, settled, undone, type History } from "./history.ts";

const kCheckMilliseconds = 350; // after the last change

// A worker of its own: one whose catalogue has a fault answers with that fault whatever it is asked, figures too.
let checker: Engine | undefined;

export interface Draft {
  history: Signal<History<DrillDocument>>;
  faults: Signal<Fault[] | undefined>; // undefined: not checked yet
  checking: Signal<boolean>; // what is said of it is of an earlier state
  changed(): boolean;
  change(how: (drill: DrillDocument) => DrillDocument, kind?: string): void; // kind: strokes of one kind are one step
  settle(): void;
  undo(): void;
  redo(): void;
  forget(): void;
}

function keptDraft(place: string): DrillDocument | undefined {
  try {
    const kept = JSON.parse(sessionStorage.getItem(place) ?? "null") as DrillDocument | null;
    return kept && typeof kept === "object" && Array.isArray(kept.rung) && kept.dose && kept.ages && kept.sources ? kept : undefined;
  } catch {
    return undefined;
  }
}

export function openDraft(place: string, start: DrillDocument, instead_of: string | undefined, catalogue: CatalogueDocument): Draft {
  const kept = keptDraft(place);
  const first = beginning(start);
  const history = signal(kept ? done(first, kept) : first);
  const faults = signal<Fault[] | undefined>(undefined);
  const checking = signal(true);
  const against = readCatalogue(catalogue);
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function check(): Promise<void> {
    const asked_of = history.peek().now;
    checker ??= openEngine({ worker: engineWorker, door });
    const answer = await checker.ask(checkRequest(asked_of, instead_of, against));
    const found = faultsOfDrill(answer);
    if (found) faults.value = found;
    if (asked_of === history.peek().now) checking.value = false;
  }
  function keep(): void {
    try {
      if (history.peek().now === start) sessionStorage.removeItem(place);
      else sessionStorage.setItem(place, JSON.stringify(history.peek().now));
    } catch {
      // A browser that keeps nothing: the draft lasts as long as the page.
    }
  }
  function set(next: History<DrillDocument>): void {
    if (next === history.peek()) return;
    history.value = next;
    checking.value = true;
    clearTimeout(timer);
    timer = setTimeout(() => {
      keep();
      void check();
    }, kCheckMilliseconds);
  }
  void check();
  return {
    history,
    faults,
    checking,
    changed: () => history.value.now !== start,
    change: (how, kind) => set(done(history.peek(), how(history.peek().now), kind)),
    settle: () => {
      history.value = settled(history.peek());
    },
    undo: () => set(undone(history.peek())),
    redo: () => set(redone(history.peek())),
    forget() {
      clearTimeout(timer);
      history.value = beginning(start);
      keep();
    },
  };
}
