// The lock before all that is about people. Packages and evenings are sealed under the people's key; while the app is
// locked that key is on the phone only sealed under the code, so a locked app cannot read them, rather than not show them.
// While a session runs the key lies there as it is, to outlive a reload and a dead battery (docs/model/pocket.md).
import { type ReadonlySignal, signal } from "@preact/signals";
import { keyOfCode, kMostTries, newStretching, waitAfter, waitLeft, weakness } from "./code.ts";
import type { LockRow, OpenRow, PocketDatabase } from "./form.ts";
import { keyOf, newKey, open, seal } from "./seal.ts";

// unset: no code was chosen yet. gone: too many wrong ones; the phone must be paired anew.
export type LockState = "unset" | "locked" | "open" | "gone";
export type Unlocked = { opened: true } | { opened: false; wait: number; left: number }; // milliseconds; tries

const kWrapped = "people's key";
type Raw = Uint8Array<ArrayBuffer>; // the people's key
type Tried = { raw: Raw; row: LockRow }; // by the right code; the row as it was before the try

async function lockRow(raw: Raw, code: string): Promise<LockRow> {
  const stretching = newStretching();
  const wrapped = await seal("people", await keyOfCode(code, stretching), kWrapped, [...raw]);
  return { ...stretching, wrapped, letters: /\D/.test(code.trim()), tries: 0, not_before: 0 };
}

const markOf = (row: LockRow): string => row.salt.join();

export class Lock {
  private readonly held = signal<LockState>("locked");
  readonly state: ReadonlySignal<LockState> = this.held;
  readonly letters = signal(false); // the code is not of digits alone
  private key: CryptoKey | undefined;
  private keyOfLock: string | undefined; // the lock that the key belongs to
  private until = 0; // a session holds it open until then
  private turn = 0; // counts closings: what was being opened meanwhile stays closed

  constructor(private readonly database: PocketDatabase, private readonly now: () => number, private readonly changed: () => Promise<void>) {}

  // Only while nothing is locked.
  get people(): CryptoKey | undefined {
    return this.key;
  }

  // As it lies on the disk. latest: the later of the phone's clock and the server's last word.
  async see(lock: LockRow | undefined, opened: OpenRow | undefined, latest: number): Promise<void> {
    this.until = opened?.until ?? 0;
    this.letters.value = lock?.letters ?? false;
    if (!lock?.wrapped) {
      this.key = lock ? undefined : opened?.key;
      this.keyOfLock = undefined;
      this.held.value = lock ? "gone" : "unset";
      return;
    }
    if (this.key && this.keyOfLock === markOf(lock)) return;
    this.key = undefined;
    const holds = opened !== undefined && this.until > latest;
    const resumes = holds && this.turn === 0; // once it was closed here, the code opens it here
    if (resumes) this.take(opened.key, lock);
    this.held.value = resumes ? "open" : "locked";
    if (opened && !holds) await this.putAway();
  }

  // Throws where the code is weak: the screen has asked for that before.
  async choose(code: string): Promise<void> {
    if (weakness(code) || this.held.value !== "unset") throw new Error("no code can be chosen now");
    const people = this.key ?? (await newKey(true));
    const raw = new Uint8Array(await crypto.subtle.exportKey("raw", people));
    const row = await lockRow(raw, code);
    const transaction = this.database.transaction("keys", "readwrite", { durability: "strict" });
    if (await transaction.store.get("lock")) throw new Error("another tab has chosen one");
    await transaction.store.put(row, "lock");
    await transaction.store.delete("open");
    await transaction.done;
    this.take(await keyOf(raw), row);
    this.held.value = "open";
    await this.changed();
  }

  async unlock(code: string): Promise<Unlocked> {
    const turn = this.turn;
    const tried = await this.tried(code);
    if ("opened" in tried) return tried;
    const { raw, row } = tried;
    const people = await keyOf(raw);
    await this.put({ ...row, tries: 0, not_before: 0 });
    const meanwhile = turn !== this.turn;
    if (!meanwhile) {
      this.take(people, row);
      this.held.value = "open";
    }
    await this.changed();
    return meanwhile ? { opened: false, wait: 0, left: kMostTries } : { opened: true };
  }

  // The old code is tried as at the locked app. One row takes the place of the other in one transaction: a phone that dies
  // in the middle has one of the two codes. Throws where the new one is weak: the screen has asked for that before.
  async change(old: string, fresh: string): Promise<Unlocked> {
    if (weakness(fresh) || this.held.value !== "open") throw new Error("no code can be changed now");
    const tried = await this.tried(old);
    if ("opened" in tried) return tried;
    const { raw, row: before } = tried;
    const row = await lockRow(raw, fresh);
    const transaction = this.database.transaction("keys", "readwrite", { durability: "strict" });
    const there = (await transaction.store.get("lock")) as LockRow | undefined;
    if (!there || markOf(there) !== markOf(before)) throw new Error("another tab has changed it");
    await transaction.store.put(row, "lock");
    await transaction.done;
    if (this.key) this.take(await keyOf(raw), row);
    await this.changed();
    return { opened: true };
  }

  // A try counts before it is looked at, so that ending the app gives none back.
  private async tried(code: string): Promise<Tried | Unlocked> {
    const now = this.now();
    const counting = this.database.transaction("keys", "readwrite", { durability: "strict" });
    const row = (await counting.store.get("lock")) as LockRow | undefined;
    const wait = row ? waitLeft(row.not_before, now) : 0;
    if (!row?.wrapped || wait > 0) {
      await counting.done;
      return { opened: false, wait, left: row?.wrapped ? kMostTries - row.tries : 0 };
    }
    const tries = row.tries + 1;
    await counting.store.put({ ...row, tries, not_before: now + waitAfter(tries) }, "lock");
    await counting.done;
    const raw = await keyOfCode(code, row).then((key) => open(key, kWrapped, row.wrapped!)).catch(() => undefined);
    if (raw === undefined) {
      if (tries >= kMostTries) await this.destroy(row);
      await this.changed();
      return { opened: false, wait: waitAfter(tries), left: Math.max(0, kMostTries - tries) };
    }
    return { raw: new Uint8Array(raw as number[]), row };
  }

  // Milliseconds until the next try counts.
  async wait(): Promise<number> {
    const row = (await this.database.get("keys", "lock")) as LockRow | undefined;
    return row ? waitLeft(row.not_before, this.now()) : 0;
  }

  // A session that runs holds it open.
  get mayClose(): boolean {
    return this.held.value === "open" && !(this.until > this.now());
  }

  // A step has put the key there, or taken it away.
  holdUntil(until: number | undefined): void {
    this.until = until ?? 0;
  }

  // At once for whoever looks; the disk follows.
  async close(): Promise<void> {
    if (this.held.value !== "open") return;
    this.turn++;
    this.key = undefined;
    this.keyOfLock = undefined;
    this.until = 0;
    this.held.value = "locked";
    await this.putAway();
  }

  private take(key: CryptoKey, lock: LockRow): void {
    this.key = key;
    this.keyOfLock = markOf(lock);
  }

  private async put(row: LockRow): Promise<void> {
    const transaction = this.database.transaction("keys", "readwrite", { durability: "strict" });
    await transaction.store.put(row, "lock");
    await transaction.done;
  }

  private async putAway(): Promise<void> {
    const transaction = this.database.transaction("keys", "readwrite", { durability: "strict" });
    await transaction.store.delete("open");
    await transaction.done;
  }

  private async destroy({ wrapped: _gone, ...row }: LockRow): Promise<void> {
    const transaction = this.database.transaction(["keys", "package", "evening"], "readwrite", { durability: "strict" });
    await transaction.objectStore("keys").put(row, "lock");
    await transaction.objectStore("keys").delete("open");
    await transaction.objectStore("package").clear();
    await transaction.objectStore("evening").clear();
    await transaction.done;
  }
}
