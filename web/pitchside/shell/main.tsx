// Opens the app: takes a link's secret out of the address, opens what is kept, begins to send, and shows the first screen.
import { signal } from "@preact/signals";
import { type JSX, render } from "preact";
import { Keep } from "../keep/keep.ts";
import { takeSecret } from "../pair/link.ts";
import { PairScreen } from "../pair/pair_screen.tsx";
import { Pairing } from "../pair/pairing.ts";
import type { PairingWords } from "../pair/pairing_words.ts";
import { Sync } from "../sync/sync.ts";
import english from "../words/en.json";
import spanish from "../words/es.json";
import { RenewalLine, SyncLine, TabLine } from "./home.tsx";
import type { KeepingWords } from "./keeping_words.ts";
import { serviceWorker } from "./places.ts";
import { type Renewal, watchForRenewal } from "./renewal.ts";

const secret = takeSecret(location, history); // before anything else could read the address

const language = navigator.language.startsWith("es") ? "es" : "en";
const words: { pairing: PairingWords; keeping: KeepingWords } = language === "es" ? spanish : english;
document.documentElement.lang = language;

const pairs = signal(false);

interface Parts {
  keep: Keep;
  sync: Sync;
  pairing: Pairing;
  renewal: Renewal;
}

function App({ keep, sync, pairing, renewal }: Parts): JSX.Element {
  const device = keep.books.value.device;
  const open = (): void => {
    pairs.value = false;
    pairing.done();
    void sync.sendNow();
  };
  if (pairs.value || device === undefined || device.standing === "stranger") {
    const { trouble } = sync.status.value;
    const notice = trouble === "revoked" || trouble === "pair-anew" ? words.keeping.trouble[trouble] : undefined;
    return <PairScreen pairing={pairing} words={words.pairing} onOpen={open} notice={notice} />;
  }
  return (
    <main class="pair">
      <h1>Lanework</h1>
      <TabLine keep={keep} words={words.keeping} />
      <RenewalLine renewal={renewal} words={words.keeping} />
      <SyncLine sync={sync} words={words.keeping} language={language} />
    </main>
  );
}

async function start(into: HTMLElement): Promise<void> {
  const keep = await Keep.open();
  const sync = new Sync(keep);
  const pairing = new Pairing(keep);
  pairs.value = secret !== undefined || keep.books.value.device === undefined;
  const renewal = watchForRenewal(serviceWorker);
  render(<App keep={keep} sync={sync} pairing={pairing} renewal={renewal} />, into);
  sync.start();
  window.addEventListener("hashchange", () => {
    const another = takeSecret(location, history);
    if (another === undefined) return;
    pairs.value = true;
    void pairing.begin(another);
  });
  sync.status.subscribe(({ trouble }) => {
    if (trouble === "update-first") renewal.look();
  });
  if (secret !== undefined) await pairing.begin(secret);
  else await pairing.resume();
}

function sayUnfit(into: HTMLElement): void {
  const line = document.createElement("p");
  line.setAttribute("role", "alert");
  line.textContent = words.pairing.failed["no-storage"];
  into.append(line);
}

const into = document.getElementById("app")!;
start(into).catch(() => sayUnfit(into));
