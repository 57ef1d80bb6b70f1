// What lies on the phone, in one IndexedDB database (docs/model/pocket.md).
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { EveningPackage } from "../package/evening_package.ts";
import type { Entry } from "./entry.ts";

export type VerdictWord = "stored" | "known" | "other-content" | "kept-aside" | "no-consent" | "dropped";

// The one row about this device itself. Not paired: there is none.
export interface DeviceRow {
  secret: string; // of a device that was revoked it goes with the last entry that is delivered
  device: string;
  standing: "paired" | "stranger" | "revoked"; // stranger: the server does not know the secret
  next_sequence: number;
  last_id?: string;
  ledger?: string;
  after: number;
  contact?: number; // when the server last answered, by its own clock, in milliseconds
  writer?: string; // the tab that may write
}

// A claim that nobody has confirmed yet, so that a reload goes on waiting.
export interface ClaimRow {
  secret: string;
  code: string;
  claimed: number; // milliseconds
}

export interface OutboxRow {
  sequence: number;
  entry: Entry;
}

export interface AcknowledgedRow {
  sequence: number;
  entry: Entry;
  heard: number; // when the verdict came, by the server's clock, in milliseconds
}

// What became of an entry that its owner must hear about; the entry itself only where the server kept it.
export interface ToldRow {
  sequence: number;
  verdict: VerdictWord;
  kind: string;
  why?: string;
  entry?: Entry;
  seen: boolean;
}

export interface PackageRow {
  squad: string;
  package: EveningPackage;
  fetched: number; // by the phone's clock, in milliseconds
}

export interface EveningRow {
  key: string;
  state: unknown;
  touched: number; // milliseconds
}

export interface Pocket extends DBSchema {
  outbox: { key: number; value: OutboxRow };
  acknowledged: { key: number; value: AcknowledgedRow };
  told: { key: number; value: ToldRow };
  package: { key: string; value: PackageRow };
  evening: { key: string; value: EveningRow };
  device: { key: "device"; value: DeviceRow };
  claim: { key: "claim"; value: ClaimRow };
}

export type PocketDatabase = IDBPDatabase<Pocket>;
export const kDevice = "device";
export const kClaim = "claim";

const kName = "lanework";
const kForm = 1;

// A step to another form is one transaction, which the browser undoes where it fails.
export function openPocket(closed: () => void): Promise<PocketDatabase> {
  return openDB<Pocket>(kName, kForm, {
    upgrade(database) {
      database.createObjectStore("outbox", { keyPath: "sequence" });
      database.createObjectStore("acknowledged", { keyPath: "sequence" });
      database.createObjectStore("told", { keyPath: "sequence" });
      database.createObjectStore("package", { keyPath: "squad" });
      database.createObjectStore("evening", { keyPath: "key" });
      database.createObjectStore("device");
      database.createObjectStore("claim");
    },
    blocking(_current, _wanted, event) {
      (event.target as IDBDatabase).close(); // a newer app in another tab: this one must be loaded anew
      closed();
    },
    terminated: closed,
  });
}
