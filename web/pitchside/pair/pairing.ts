// Pairs this phone with a coach: claims the link, shows the code that the lead compares, waits until it is confirmed.
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Keep } from "../keep/keep.ts";
import type { Claim } from "../keep/form.ts";
import { ask } from "../sync/answer.ts";
import { type Unfit, unfit } from "./fit.ts";

// Keys of words: 'pairing.failed' in words/en.json.
export type PairingFault = Unfit | "no-link" | "link-used" | "no-signal" | "too-fast" | "too-late" | "suspended" | "deliver-first" | "other-tab" | "server";

export type PairingState =
  | { at: "link-wanted" }
  | { at: "asking" }
  | { at: "code"; code: string }
  | { at: "paired"; lasting: boolean } // lasting: the browser promised to keep what is kept
  | { at: "failed"; why: PairingFault };

const kPollMilliseconds = 2000;
const kClaimMilliseconds = 10 * 60_000; // as the server counts it

function labelOfPhone(): string {
  const agent = navigator.userAgent;
  const system = /Android|iPhone|iPad|Windows|Mac OS X|CrOS|Linux/.exec(agent)?.[0] ?? "A phone";
  const browser = /Firefox|SamsungBrowser|Edg|Chrome|Safari/.exec(agent)?.[0] ?? "";
  return `${system} ${browser}`.trim();
}

export class Pairing {
  private readonly held = signal<PairingState>({ at: "link-wanted" });
  readonly state: ReadonlySignal<PairingState> = this.held;
  private round = 0; // a newer link ends the wait for an older one

  constructor(private readonly keep: Keep) {}

  // A reload goes on with the claim that it left.
  async resume(): Promise<void> {
    const row = await this.keep.claim();
    if (row && this.held.value.at === "link-wanted") await this.wait(row);
  }

  async begin(link: string | undefined): Promise<void> {
    const round = ++this.round;
    if (link === undefined) return this.fail("no-link");
    this.held.value = { at: "asking" };
    const reason = await this.refused();
    if (reason) return this.fail(reason);
    const answer = await ask({ path: "/api/pairings/claim", body: JSON.stringify({ link, label: labelOfPhone() }) });
    if (round !== this.round) return;
    if (answer.from === "nobody") return this.fail("no-signal");
    const { secret, code } = answer.body;
    if (answer.status === 410 || answer.status === 400) return this.fail("link-used");
    if (answer.status === 429) return this.fail("too-fast");
    if (answer.status !== 201 || typeof secret !== "string" || typeof code !== "string") return this.fail("server");
    const row = { secret, code, claimed: Date.now() };
    await this.keep.keepClaim(row);
    await this.wait(row);
  }

  // The coach has seen that the phone is paired; should it lose its right later, the screen begins anew.
  done(): void {
    if (this.held.value.at === "paired") this.held.value = { at: "link-wanted" };
  }

  private async refused(): Promise<PairingFault | undefined> {
    const reason = await unfit();
    if (reason) return reason;
    if (!this.keep.writes.value) return "other-tab";
    // What a revoked phone still has is its old owner's, and must not go out as the new one's.
    const { device, waiting } = this.keep.books.value;
    return device?.standing === "revoked" && waiting > 0 ? "deliver-first" : undefined;
  }

  private async wait(row: Claim): Promise<void> {
    const round = this.round;
    this.held.value = { at: "code", code: row.code };
    while (round === this.round) {
      const answer = await ask({ path: "/api/pairings/claimed", body: JSON.stringify({ secret: row.secret }) });
      if (round !== this.round) return;
      if (answer.from === "server" && answer.status === 200) {
        const { state, device } = answer.body;
        if (state === "confirmed" && typeof device === "string") return this.paired(row.secret, device);
        if (state === "suspended") return this.over("suspended");
      }
      if (answer.from === "server" && answer.status === 404) return this.over("too-late");
      if (Date.now() - row.claimed > kClaimMilliseconds && answer.from === "server") return this.over("too-late");
      await new Promise((resolve) => setTimeout(resolve, kPollMilliseconds));
    }
  }

  private async paired(secret: string, device: string): Promise<void> {
    await this.keep.paired(secret, device);
    const lasting = await navigator.storage.persist().catch(() => false);
    this.held.value = { at: "paired", lasting };
  }

  private async over(why: PairingFault): Promise<void> {
    await this.keep.keepClaim(undefined);
    this.fail(why);
  }

  private fail(why: PairingFault): void {
    this.held.value = { at: "failed", why };
  }
}
