// What lies on the phone, in one IndexedDB database (docs/model/pocket.md): numbers, times and ids of squads as they
// are, everything else sealed (seal.ts).
import type { DBSchema, IDBPDatabase } from "idb";
import type { Entry } from "./entry.ts";
import type { Stretching } from "./code.ts";
import type { Sealed } from "./seal.ts";

export type VerdictWord = "stored" | "known" | "other-content" | "kept-aside" | "no-consent" | "dropped";

// The one row about this device itself. Not paired: there is none.
export interface DeviceRow {
  sealed: Sealed; // its secret; of a device that was revoked it goes with the last entry that is delivered
  device: string;
  standing: "paired" | "stranger" | "revoked"; // stranger: the server does not know the secret
  next_sequence: number;
  last_id?: string;
  ledger?: string;
  after: number;
  contact?: number; // when the server last answered, by its own clock, in milliseconds
  writer?: string; // the tab that may write
}
export interface Device extends Omit<DeviceRow, "sealed"> {
  secret: string;
}

export interface ClaimRow {
  sealed: Sealed; // of Claim without its time
  claimed: number; // milliseconds
}
// A claim that nobody has confirmed yet, so that a reload goes on waiting.
export interface Claim {
  secret: string;
  code: string;
  claimed: number;
}

export interface OutboxRow {
  sequence: number;
  sealed: Sealed; // the entry
}
export interface Waiting {
  sequence: number;
  entry: Entry;
}

export interface AcknowledgedRow extends OutboxRow {
  heard: number; // when the verdict came, by the server's clock, in milliseconds
}

export interface ToldRow {
  sequence: number;
  verdict: VerdictWord;
  seen: boolean;
  sealed: Sealed; // of ToldWords
}
export interface ToldWords {
  kind: string;
  why?: string;
  entry?: Entry; // only where the server kept it
}
// What became of an entry that its owner must hear about.
export type Told = Omit<ToldRow, "sealed"> & ToldWords;

export interface PackageRow {
  squad: string;
  fetched: number; // by the phone's clock, in milliseconds
  sealed: Sealed; // the package, under the people's key
  safety: Sealed; // what is wanted when somebody is hurt, under the device's own: it is there while the app is locked
}

export interface EveningRow {
  key: string;
  touched: number; // milliseconds
  sealed: Sealed; // its state, under the people's key
}

// The people's key, sealed under the code; gone: too many wrong ones.
export interface LockRow extends Stretching {
  wrapped?: Sealed;
  letters: boolean; // the code is not of digits alone
  tries: number;
  not_before: number; // milliseconds
}
// The people's key as it lies there while a session runs; and before the first code is chosen.
export interface OpenRow {
  key: CryptoKey;
  evening?: string;
  until?: number; // milliseconds
}
export interface KeyRows {
  device: CryptoKey; // cannot be taken out
  lock: LockRow;
  open: OpenRow;
}

export interface Pocket extends DBSchema {
  outbox: { key: number; value: OutboxRow };
  acknowledged: { key: number; value: AcknowledgedRow };
  told: { key: number; value: ToldRow };
  package: { key: string; value: PackageRow };
  evening: { key: string; value: EveningRow };
  device: { key: "device"; value: DeviceRow };
  claim: { key: "claim"; value: ClaimRow };
  keys: { key: keyof KeyRows; value: KeyRows[keyof KeyRows] };
}

export type PocketDatabase = IDBPDatabase<Pocket>;
export const kDevice = "device";
export const kClaim = "claim";

export const kPocket = "lanework";
export const kForm = 2;
