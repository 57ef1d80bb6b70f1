// The phone's keeping and sending without its screens, for tests: the parts themselves, bundled as the app's are.
import { Keep } from "../../web/pitchside/keep/keep.ts";
import { unfit } from "../../web/pitchside/pair/fit.ts";
import { holdsUntil } from "../../web/pitchside/shell/evenings.ts";
import { Sync } from "../../web/pitchside/sync/sync.ts";

const kDay = "2026-01-01";
const kCode = "482913"; // as paired.mjs has it
let shift = 0; // how far the phone's clock is off

async function open() {
  const keep = await Keep.open(holdsUntil, () => new Date(Date.now() + shift));
  const sync = new Sync(keep);
  Object.assign(window, { laneState: keep.lock.state.value }); // as it was opened
  if (keep.lock.state.value === "locked") await keep.lock.unlock(kCode);
  return {
    keep,
    sync,
    unfit,
    shiftClock: (milliseconds: number) => (shift = milliseconds),
    // One tap: a drill marked, and the evening that counts its entries in the same transaction.
    async tap(day = kDay, drill = "side-plank") {
      const state = ((await keep.evening("evening")) ?? { count: 0 }) as { count: number; filling?: string };
      const kept = await keep.step("evening", { ...state, count: state.count + 1 }, [{ kind: "drill-marked", squad: "u13-kestrels", day, start: "18:00", drill, mark: "done" }]);
      if (kept.kept) console.log(`kept ${kept.entries[0]!.id}`);
      return kept;
    },
    async tapOn(day: string) {
      for (;;) await this.tap(day);
    },
    async paired(secret: string, device: string) {
      await keep.paired(secret, device);
      await keep.lock.choose(kCode);
    },
    // Everything on the phone as it lies there, as text.
    async dump(): Promise<string> {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open("lanework");
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
      const out: Record<string, unknown> = {};
      for (const name of database.objectStoreNames) {
        out[name] = await new Promise((resolve) => {
          const request = database.transaction(name).objectStore(name).getAll();
          request.onsuccess = () => resolve(request.result);
        });
      }
      database.close();
      return JSON.stringify(out);
    },
  };
}

open().then(
  (lane) => Object.assign(window, { lane }),
  (error: unknown) => Object.assign(window, { laneFault: String(error) }),
);
