// When the phone speaks with the server: when the app opens, comes into view, gets signal, every minute while it is open,
// soon after something was entered, and by button. Nothing depends on running in the background.
import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Keep } from "../keep/keep.ts";
import { exchange, type Outcome, type Trouble } from "./exchange.ts";
import { fetchPackages } from "./fetch_packages.ts";

const kEveryMilliseconds = 60_000;
const kAgainMilliseconds = 15_000; // where there was no signal
const kSoonMilliseconds = 1_500;
const kPackagesEveryMilliseconds = 15 * 60_000;

export interface SyncStatus {
  waiting: number; // rows of the outbox, whatever was shown before
  sending: boolean;
  contact: number | undefined; // milliseconds, the server's clock
  trouble: Trouble | undefined;
}

export class Sync {
  readonly status: ReadonlySignal<SyncStatus>;
  private readonly sending = signal(false);
  private readonly trouble = signal<Trouble | undefined>(undefined);
  private notBefore = 0; // by performance.now(), which no change of the clock moves
  private packagesAt = Number.NEGATIVE_INFINITY;
  private running: Promise<void> | undefined;
  private readonly ends: (() => void)[] = [];

  constructor(private readonly keep: Keep) {
    this.status = computed(() => ({
      waiting: keep.books.value.waiting,
      sending: this.sending.value,
      contact: keep.books.value.device?.contact,
      trouble: this.trouble.value,
    }));
  }

  start(): void {
    const now = () => void this.run();
    const signal = () => this.signalCame();
    const none = () => this.settle({ trouble: "no-signal" });
    const whenVisible = () => document.visibilityState === "visible" && signal();
    const timer = setInterval(now, kEveryMilliseconds);
    const again = setInterval(() => this.trouble.value === "no-signal" && navigator.onLine && now(), kAgainMilliseconds);
    document.addEventListener("visibilitychange", whenVisible);
    window.addEventListener("online", signal);
    window.addEventListener("offline", none);
    let soon: ReturnType<typeof setTimeout> | undefined;
    let before = this.keep.books.value.waiting;
    const stopWatching = effect(() => {
      const { waiting } = this.keep.books.value;
      if (waiting > before && this.keep.writes.value) {
        clearTimeout(soon);
        soon = setTimeout(now, kSoonMilliseconds);
      }
      before = waiting;
    });
    this.ends.push(stopWatching, () => clearTimeout(soon), () => clearInterval(timer), () => clearInterval(again));
    this.ends.push(() => document.removeEventListener("visibilitychange", whenVisible));
    this.ends.push(() => window.removeEventListener("online", signal), () => window.removeEventListener("offline", none));
    now();
  }

  stop(): void {
    for (const end of this.ends.splice(0)) end();
  }

  // By button: also packages, whenever they were fetched last. What the server asked to wait for is waited for all the same.
  sendNow(): Promise<void> {
    this.packagesAt = Number.NEGATIVE_INFINITY;
    if (this.trouble.value === "no-signal") this.trouble.value = undefined;
    return this.run();
  }

  // 'No signal' is not said any longer than it is so. What was asked before signal came may hang: it is asked anew after it.
  private signalCame(): void {
    if (this.trouble.value === "no-signal") this.trouble.value = undefined;
    void (this.running ?? Promise.resolve()).then(() => this.run());
  }

  run(): Promise<void> {
    this.running ??= this.once().finally(() => (this.running = undefined));
    return this.running;
  }

  private async once(): Promise<void> {
    if (!this.keep.writes.value || !this.keep.books.value.device || performance.now() < this.notBefore) return;
    this.sending.value = true;
    try {
      let outcome = await exchange(this.keep);
      if (!outcome.trouble && this.wantsPackages()) {
        outcome = await fetchPackages(this.keep);
        if (!outcome.trouble) this.packagesAt = performance.now();
        if (outcome.trouble === "revoked") outcome = await this.lastWords(outcome);
      }
      this.settle(outcome);
    } catch {
      this.settle({ trouble: "phone-full" }); // the phone's own disk: what was heard is heard again
    } finally {
      this.sending.value = false;
    }
  }

  // That it lost its right was heard beside the outbox: what waits is delivered all the same.
  private async lastWords(outcome: Outcome): Promise<Outcome> {
    if (this.keep.books.value.device) await exchange(this.keep);
    return outcome;
  }

  private wantsPackages(): boolean {
    return this.keep.books.value.device?.standing === "paired" && performance.now() - this.packagesAt > kPackagesEveryMilliseconds;
  }

  private settle({ trouble, waitSeconds }: Outcome): void {
    this.trouble.value = trouble;
    if (waitSeconds !== undefined) this.notBefore = performance.now() + waitSeconds * 1000;
  }
}
