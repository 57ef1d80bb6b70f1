// Everything that the phone keeps, as the rest of the app sees it.
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { EveningPackage } from "../package/evening_package.ts";
import type { Entry, NewEntry } from "./entry.ts";
import { type ClaimRow, type DeviceRow, kClaim, kDevice, openPocket, type PocketDatabase, type ToldRow } from "./form.ts";
import { dropOld, kWhole, wipe } from "./leave.ts";
import { type HeldPackage, heldPackages, keepPackage, trimPackages } from "./packages.ts";
import { type Kept, keepStep } from "./step.ts";
import { type Heard, takeVerdicts } from "./verdicts.ts";
import { becomeWriter } from "./writer.ts";

export interface Books {
  waiting: number; // rows of the outbox
  told: ToldRow[]; // what the owner has not yet seen
  device: DeviceRow | undefined;
}

const kChannel = "lanework-kept";

export class Keep {
  readonly books = signal<Books>({ waiting: 0, told: [], device: undefined });
  readonly writes: ReadonlySignal<boolean>; // this tab may write; another one's turn comes when that one closes
  readonly packages_changed = signal(0); // counts: another package was kept, or one has gone
  readonly closed = signal(false); // the database went away under this tab: load it anew
  private readonly writer: ReturnType<typeof becomeWriter>;
  private line: Promise<unknown> = Promise.resolve(); // steps one by one: a state that had to wait for room overtakes none
  private readonly channel = new BroadcastChannel(kChannel);

  private constructor(private readonly database: PocketDatabase, private readonly now: () => Date) {
    this.channel.onmessage = () => void this.look();
    this.writer = becomeWriter(database, () => void this.look());
    this.writes = computed(() => this.writer.holds.value);
  }

  // Throws where this browser has no IndexedDB, no locks, or a newer form of the database.
  static async open(now: () => Date = () => new Date()): Promise<Keep> {
    let keep: Keep | undefined;
    const database = await openPocket(() => {
      if (keep) keep.closed.value = true;
    });
    keep = new Keep(database, now);
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
    const kept = await keepStep(this.database, { token: this.writer.token, now: this.now }, evening, state, entries);
    if (kept.kept && entries.length > 0) await this.changed();
    return kept;
  }

  async evening(key: string): Promise<unknown> {
    return (await this.database.get("evening", key))?.state;
  }

  async evenings(): Promise<{ key: string; state: unknown }[]> {
    return this.database.getAll("evening");
  }

  packages(): Promise<HeldPackage[]> {
    return heldPackages(this.database, this.now().getTime());
  }

  async keepPackage(squad: string, value: EveningPackage): Promise<boolean> {
    const kept = await keepPackage(this.database, squad, value, this.now().getTime());
    await this.changed();
    this.packages_changed.value++;
    return kept;
  }

  async trimPackages(squads: string[]): Promise<void> {
    await trimPackages(this.database, squads);
    await this.changed();
    this.packages_changed.value++;
  }

  outbox(most: number) {
    return this.database.getAll("outbox", null, most);
  }

  async takeVerdicts(heard: Heard): Promise<void> {
    await takeVerdicts(this.database, heard);
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

  claim(): Promise<ClaimRow | undefined> {
    return this.database.get("claim", kClaim);
  }

  async keepClaim(row: ClaimRow | undefined): Promise<void> {
    const transaction = this.database.transaction("claim", "readwrite", { durability: "strict" });
    if (row) await transaction.store.put(row, kClaim);
    else await transaction.store.delete(kClaim);
    await transaction.done;
  }

  // Its count goes on where there was a device before: what waits keeps its numbers.
  async paired(secret: string, device: string): Promise<void> {
    const transaction = this.database.transaction([...kWhole, "claim"], "readwrite", { durability: "strict" });
    const devices = transaction.objectStore("device");
    const before = await devices.get(kDevice);
    const row: DeviceRow = { secret, device, standing: "paired", next_sequence: before?.next_sequence ?? 1, after: 0, writer: this.writer.token };
    if (before?.last_id !== undefined) row.last_id = before.last_id;
    if (before?.ledger !== undefined) row.ledger = before.ledger;
    await devices.put(row, kDevice);
    await transaction.objectStore("claim").delete(kClaim);
    await transaction.done;
    await this.changed();
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
    this.channel.postMessage("changed");
  }

  private async look(): Promise<void> {
    const transaction = this.database.transaction(["outbox", "told", "device"]);
    const [waiting, told, device] = await Promise.all([
      transaction.objectStore("outbox").count(),
      transaction.objectStore("told").getAll(),
      transaction.objectStore("device").get(kDevice),
      transaction.done,
    ]);
    this.books.value = { waiting, told: told.filter(({ seen }) => !seen), device };
  }
}
