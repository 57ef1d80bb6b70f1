// Everything that the phone keeps, as the rest of the app sees it.
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { EveningPackage } from "../package/evening_package.ts";
import { Drawer } from "./drawer.ts";
import type { Entry, NewEntry } from "./entry.ts";
import { type Claim, type Device, type DeviceRow, kClaim, kDevice, type LockRow, type OpenRow, type PocketDatabase, type Told, type Waiting } from "./form.ts";
import { dropOld, kWhole, wipe } from "./leave.ts";
import { Lock } from "./lock.ts";
import { openPocket } from "./open_pocket.ts";
import { type HeldPackage, heldPackages, keepPackage, trimPackages } from "./packages.ts";
import type { Safety } from "./safety.ts";
import { type Kept, keepStep, type HoldsUntil } from "./step.ts";
import { type Heard, takeVerdicts } from "./verdicts.ts";
import { becomeWriter } from "./writer.ts";

export interface Books {
  waiting: number; // rows of the outbox
  told: Told[]; // what the owner has not yet seen
  device: Device | undefined;
}
export type PackageKept = "kept" | "no-room" | "locked";

const kChannel = "lanework-kept";
const kChanged = "changed";
const kLockNow = "lock";

export class Keep {
  readonly books = signal<Books>({ waiting: 0, told: [], device: undefined });
  readonly writes: ReadonlySignal<boolean>; // this tab may write; another one's turn comes when that one closes
  readonly packages_changed = signal(0); // counts: another package was kept, or one has gone
  readonly closed = signal(false); // the database went away under this tab: load it anew
  readonly lock: Lock;
  private readonly writer: ReturnType<typeof becomeWriter>;
  private line: Promise<unknown> = Promise.resolve(); // steps one by one: a state that had to wait for room overtakes none
  private looks: Promise<void> = Promise.resolve();
  private readonly channel = new BroadcastChannel(kChannel);

  private constructor(private readonly database: PocketDatabase, private readonly drawer: Drawer, private readonly now: () => Date, private readonly holdsUntil: HoldsUntil) {
    this.lock = new Lock(database, () => now().getTime(), () => this.changed());
    this.channel.onmessage = ({ data }) => void (data === kLockNow ? this.lock.close() : this.look());
    this.writer = becomeWriter(database, () => void this.look());
    this.writes = computed(() => this.writer.holds.value);
  }

  // Throws where this browser has no IndexedDB, no locks; NewerForm where a newer app was here; OldFormStays where an older
  // one could not be changed. holdsUntil: how long an evening's state keeps the app open (lock.ts).
  static async open(holdsUntil: HoldsUntil, now: () => Date = () => new Date()): Promise<Keep> {
    let keep: Keep | undefined;
    const database = await openPocket(() => {
      if (keep) keep.closed.value = true;
    });
    keep = new Keep(database, await Drawer.open(database), now, holdsUntil);
    await keep.writer.tried;
    await keep.look();
    return keep;
  }

  // Resolves when it is on the disk. state may be made of the entries, where it needs their ids.
  step(evening: string, state: unknown | ((made: Entry[]) => unknown), entries: NewEntry[]): Promise<Kept> {
    const kept = this.line.then(() => this.keepStep(evening, state, entries));
    this.line = kept.catch(() => undefined);
    return kept;
  }

  private async keepStep(evening: string, state: unknown, entries: NewEntry[]): Promise<Kept> {
    if (!this.writes.value) return { kept: false, why: "other-tab" };
    const people = this.lock.people;
    if (!people) return { kept: false, why: this.books.value.device ? "locked" : "not-paired" };
    const at = { token: this.writer.token, now: this.now, drawer: this.drawer, people, holdsUntil: this.holdsUntil };
    const kept = await keepStep(this.database, at, evening, state, entries);
    if (kept.kept) this.lock.holdUntil(kept.until);
    if (kept.kept && entries.length > 0) await this.changed();
    return kept;
  }

  // Nothing while the app is locked.
  async evening(key: string): Promise<unknown> {
    const row = await this.database.get("evening", key);
    const people = this.lock.people;
    return row && people && this.drawer.evening(row, people);
  }

  // Of those that were kept, by key, in one reading; none while the app is locked.
  async evenings(keys: string[]): Promise<Map<string, unknown>> {
    const people = this.lock.people;
    if (!people) return new Map();
    const { store, done } = this.database.transaction("evening");
    const rows = await Promise.all(keys.map((key) => store.get(key)));
    await done;
    const opened = keys.flatMap((key, index) => {
      const row = rows[index];
      return row ? [this.drawer.evening(row, people).then((state): [string, unknown] => [key, state])] : [];
    });
    return new Map(await Promise.all(opened));
  }

  // None while the app is locked.
  async packages(): Promise<HeldPackage[]> {
    const people = this.lock.people;
    return people ? heldPackages(this.database, this.drawer, people, this.now().getTime()) : [];
  }

  // Also while the app is locked.
  async safety(): Promise<Safety[]> {
    return Promise.all((await this.database.getAll("package")).map((row) => this.drawer.safety(row)));
  }

  async keepPackage(squad: string, value: EveningPackage): Promise<PackageKept> {
    const people = this.lock.people;
    if (!people) return "locked";
    const kept = await keepPackage(this.database, await this.drawer.packageRow(squad, value, this.now().getTime(), people));
    await this.changed();
    this.packages_changed.value++;
    return kept ? "kept" : "no-room";
  }

  async trimPackages(squads: string[]): Promise<void> {
    await trimPackages(this.database, squads);
    await this.changed();
    this.packages_changed.value++;
  }

  async outbox(most: number): Promise<Waiting[]> {
    return Promise.all((await this.database.getAll("outbox", null, most)).map((row) => this.drawer.waiting(row)));
  }

  async takeVerdicts(heard: Heard): Promise<void> {
    await takeVerdicts(this.database, this.drawer, heard);
    await dropOld(this.database, heard.now);
    await this.changed();
  }

  // The owner has read it.
  async sawTold(sequence: number): Promise<void> {
    const transaction = this.database.transaction("told", "readwrite", { durability: "strict" });
    const row = await transaction.store.get(sequence);
    if (row) await transaction.store.put({ ...row, seen: true });
    await transaction.done;
    await this.changed();
  }

  async revoked(): Promise<void> {
    await wipe(this.database);
    await this.changed();
    this.packages_changed.value++;
  }

  // The server does not know the secret: everything stays, until the device is paired anew.
  async unknownToServer(): Promise<void> {
    const transaction = this.database.transaction("device", "readwrite", { durability: "strict" });
    const row = await transaction.store.get(kDevice);
    if (row) await transaction.store.put({ ...row, standing: "stranger" }, kDevice);
    await transaction.done;
    await this.changed();
  }

  async claim(): Promise<Claim | undefined> {
    const row = await this.database.get("claim", kClaim);
    return row && this.drawer.claim(row);
  }

  async keepClaim(claim: Claim | undefined): Promise<void> {
    const row = claim && (await this.drawer.claimRow(claim));
    const transaction = this.database.transaction("claim", "readwrite", { durability: "strict" });
    if (row) await transaction.store.put(row, kClaim);
    else await transaction.store.delete(kClaim);
    await transaction.done;
  }

  // Its count goes on where there was a device before: what waits keeps its numbers. Who paired it anew while it was
  // locked has forgotten the code: what lay under it goes, and is fetched again.
  async paired(secret: string, device: string): Promise<void> {
    const sealed = await this.drawer.secretSealed(secret);
    const transaction = this.database.transaction([...kWhole, "claim"], "readwrite", { durability: "strict" });
    const devices = transaction.objectStore("device");
    const before = await devices.get(kDevice);
    const row: DeviceRow = { sealed, device, standing: "paired", next_sequence: before?.next_sequence ?? 1, after: 0, writer: this.writer.token };
    if (before?.last_id !== undefined) row.last_id = before.last_id;
    if (before?.ledger !== undefined) row.ledger = before.ledger;
    await devices.put(row, kDevice);
    await transaction.objectStore("claim").delete(kClaim);
    if (this.lock.state.value === "locked" || this.lock.state.value === "gone") {
      await transaction.objectStore("keys").delete("lock");
      await transaction.objectStore("keys").delete("open");
      await transaction.objectStore("package").clear();
      await transaction.objectStore("evening").clear();
    }
    await transaction.done;
    await this.changed();
    this.packages_changed.value++;
  }

  // In every tab.
  async lockNow(): Promise<void> {
    this.channel.postMessage(kLockNow);
    await this.lock.close();
  }

  takeOver(): void {
    this.writer.takeOver();
  }

  close(): void {
    this.writer.letGo();
    this.channel.close();
    this.database.close();
  }

  private async changed(): Promise<void> {
    await this.look();
    this.channel.postMessage(kChanged);
  }

  private look(): Promise<void> {
    this.looks = this.looks.catch(() => undefined).then(() => this.lookOnce());
    return this.looks;
  }

  private async lookOnce(): Promise<void> {
    const transaction = this.database.transaction(["outbox", "told", "device", "keys"]);
    const keys = transaction.objectStore("keys");
    const [waiting, told, row, lock, opened] = await Promise.all([
      transaction.objectStore("outbox").count(),
      transaction.objectStore("told").getAll(),
      transaction.objectStore("device").get(kDevice),
      keys.get("lock") as Promise<LockRow | undefined>,
      keys.get("open") as Promise<OpenRow | undefined>,
      transaction.done,
    ]);
    const device = row && (await this.drawer.device(row));
    const unseen = await Promise.all(told.filter(({ seen }) => !seen).map((one) => this.drawer.told(one)));
    await this.lock.see(lock, opened, Math.max(this.now().getTime(), row?.contact ?? 0));
    this.books.value = { waiting, told: unseen, device };
  }
}
