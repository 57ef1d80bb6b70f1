// One tab writes, by a lock that the browser gives to the next one when its holder closes or dies. A tab that sleeps
// holds it too: then the coach may take it over by hand.
import { signal } from "@preact/signals";
import { kDevice, type PocketDatabase } from "./form.ts";

const kLock = "lanework-writer";
const kFirstTryMilliseconds = 300;

export interface Writer {
  token: string;
  holds: { readonly value: boolean };
  tried: Promise<void>; // it writes, or another tab has had the time to be seen to
  takeOver(): void;
  letGo(): void;
}

export function becomeWriter(database: PocketDatabase, changed: () => void): Writer {
  const token = crypto.randomUUID();
  const holds = signal(false);
  let release: (() => void) | undefined;
  let settle: () => void = () => {};
  const tried = new Promise<void>((resolve) => {
    settle = resolve;
    setTimeout(resolve, kFirstTryMilliseconds);
  });
  let queued = new AbortController();

  // Every write looks for this token in its own transaction: a tab whose lock was taken while it slept writes nothing.
  async function sign(): Promise<void> {
    const transaction = database.transaction("device", "readwrite", { durability: "strict" });
    const row = await transaction.store.get(kDevice);
    if (row) await transaction.store.put({ ...row, writer: token }, kDevice);
    await transaction.done;
  }

  async function hold(): Promise<void> {
    await sign();
    holds.value = true;
    changed();
    settle();
    await new Promise<void>((resolve) => (release = resolve));
    holds.value = false;
  }

  async function ask(options: LockOptions): Promise<void> {
    try {
      await navigator.locks.request(kLock, options, hold);
    } catch {
      if (!holds.value) return; // it gave up its place in the queue
      holds.value = false; // another tab took it over: wait again
      queue();
    }
  }

  function queue(): void {
    queued = new AbortController();
    void ask({ signal: queued.signal });
  }

  queue();
  return {
    token,
    holds,
    tried,
    takeOver() {
      if (holds.value) return;
      queued.abort();
      void ask({ steal: true });
    },
    letGo() {
      queued.abort();
      release?.();
    },
  };
}
