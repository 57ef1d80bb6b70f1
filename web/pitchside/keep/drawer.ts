// Puts rows under their seals and takes them out again: what is needed to send under the device's own key, what is
// about people under theirs.
import type { EveningPackage } from "../package/evening_package.ts";
import type { Entry } from "./entry.ts";
import type { Claim, ClaimRow, Device, DeviceRow, EveningRow, OutboxRow, PackageRow, PocketDatabase, Told, ToldRow, ToldWords, Waiting } from "./form.ts";
import { type Safety, safetyOf } from "./safety.ts";
import { newKey, open, seal, type Sealed } from "./seal.ts";

export class Drawer {
  private constructor(private readonly own: CryptoKey) {}

  // The device's key is made once, and cannot be taken out of the browser by what runs there.
  static async open(database: PocketDatabase): Promise<Drawer> {
    const fresh = await newKey(false);
    const transaction = database.transaction("keys", "readwrite", { durability: "strict" });
    const there = (await transaction.store.get("device")) as CryptoKey | undefined;
    if (!there) await transaction.store.put(fresh, "device");
    await transaction.done;
    return new Drawer(there ?? fresh);
  }

  secretSealed(secret: string): Promise<Sealed> {
    return seal("device", this.own, "device", secret);
  }

  async device({ sealed, ...row }: DeviceRow): Promise<Device> {
    return { ...row, secret: (await open(this.own, "device", sealed)) as string };
  }

  async claimRow({ claimed, ...secrets }: Claim): Promise<ClaimRow> {
    return { claimed, sealed: await seal("device", this.own, "claim", secrets) };
  }

  async claim({ claimed, sealed }: ClaimRow): Promise<Claim> {
    return { claimed, ...((await open(this.own, "claim", sealed)) as Omit<Claim, "claimed">) };
  }

  async outboxRow(entry: Entry): Promise<OutboxRow> {
    return { sequence: entry.sequence, sealed: await seal("device", this.own, `entry ${entry.sequence}`, entry) };
  }

  async waiting({ sequence, sealed }: OutboxRow): Promise<Waiting> {
    return { sequence, entry: (await open(this.own, `entry ${sequence}`, sealed)) as Entry };
  }

  async toldRow({ sequence, verdict, seen, ...words }: Told): Promise<ToldRow> {
    return { sequence, verdict, seen, sealed: await seal("device", this.own, `told ${sequence}`, words satisfies ToldWords) };
  }

  async told({ sealed, ...row }: ToldRow): Promise<Told> {
    return { ...row, ...((await open(this.own, `told ${row.sequence}`, sealed)) as ToldWords) };
  }

  async packageRow(squad: string, whole: EveningPackage, fetched: number, people: CryptoKey): Promise<PackageRow> {
    return {
      squad,
      fetched,
      sealed: await seal("people", people, `package ${squad}`, whole),
      safety: await seal("device", this.own, `safety ${squad}`, safetyOf(whole)),
    };
  }

  async package({ squad, sealed }: PackageRow, people: CryptoKey): Promise<EveningPackage> {
    return (await open(people, `package ${squad}`, sealed)) as EveningPackage;
  }

  async safety({ squad, safety }: PackageRow): Promise<Safety> {
    return (await open(this.own, `safety ${squad}`, safety)) as Safety;
  }

  async eveningRow(key: string, state: unknown, touched: number, people: CryptoKey): Promise<EveningRow> {
    return { key, touched, sealed: await seal("people", people, `evening ${key}`, state) };
  }

  evening({ key, sealed }: EveningRow, people: CryptoKey): Promise<unknown> {
    return open(people, `evening ${key}`, sealed);
  }
}
