// Packages of squads: kept whole, trimmed to what the device's owner has now, and without names once their lease is over.
import type { EveningPackage } from "../package/evening_package.ts";
import type { DoorValue } from "../../shared/engine/door_value.ts";
import type { Drawer } from "./drawer.ts";
import { kDevice, type PackageRow, type PocketDatabase } from "./form.ts";
import { isFull, makeRoom } from "./room.ts";

export interface HeldPackage {
  package: EveningPackage;
  locked: boolean; // names are ids until the server was reached again
  fetched: number;
}

// False: there is no room for it, and the old one stays.
export async function keepPackage(database: PocketDatabase, row: PackageRow): Promise<boolean> {
  for (;;) {
    try {
      const transaction = database.transaction("package", "readwrite", { durability: "strict" });
      await Promise.all([transaction.store.put(row), transaction.done]);
      return true;
    } catch (error) {
      if (!isFull(error)) throw error;
      if (!(await makeRoom(database, undefined))) return false;
    }
  }
}

export async function trimPackages(database: PocketDatabase, squads: string[]): Promise<void> {
  const transaction = database.transaction("package", "readwrite", { durability: "strict" });
  for (const squad of await transaction.store.getAllKeys()) {
    if (!squads.includes(squad)) await transaction.store.delete(squad);
  }
  await transaction.done;
}

function withoutNames(value: DoorValue, idOf: Map<string, string>): DoorValue {
  if (typeof value === "string") return idOf.get(value) ?? value;
  if (Array.isArray(value)) return value.map((one) => withoutNames(one, idOf));
  if (typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, withoutNames(one, idOf)]));
}

function lockedForm(whole: EveningPackage): EveningPackage {
  const idOf = new Map(whole.roster.map(({ name, player }) => [name, player]));
  return {
    ...whole,
    roster: whole.roster.map((one) => ({ ...one, name: one.player })),
    evenings: withoutNames(whole.evenings as unknown as DoorValue, idOf) as unknown as EveningPackage["evenings"],
  };
}

// A phone's clock that was put back makes no lease longer: the server's last word counts too.
export async function heldPackages(database: PocketDatabase, drawer: Drawer, people: CryptoKey, now: number): Promise<HeldPackage[]> {
  const transaction = database.transaction(["package", "device"]);
  const [rows, device] = await Promise.all([
    transaction.objectStore("package").getAll(),
    transaction.objectStore("device").get(kDevice),
    transaction.done,
  ]);
  const latest = Math.max(now, device?.contact ?? 0);
  return Promise.all(
    rows.map(async (row) => {
      const whole = await drawer.package(row, people);
      const locked = !(Date.parse(whole.lease_until) > latest);
      return { package: locked ? lockedForm(whole) : whole, locked, fetched: row.fetched };
    }),
  );
}
