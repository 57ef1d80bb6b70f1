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
import { EveningScreens } from "../screens/evening_screens.tsx";
import { EveningList } from "./evening_list.tsx";
import { RenewalLine, SyncLine, TabLine, ToldLines } from "./home.tsx";
import type { KeepingWords } from "./keeping_words.ts";
import { type House, openHouse } from "./open_house.ts";
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
  house: House;
}

// The open evening, with what could not be kept above it and the way back where nothing runs.
function Open({ house, keep }: { house: House; keep: Keep }): JSX.Element | null {
  const pitch = house.pitch.value;
  if (!pitch) return null;
  const why = house.refused.value;
  const { screen } = pitch.evening.value;
  const may_leave = (screen === "tonight" || screen === "finished") && pitch.overlay.value === "none";
  return (
    <>
      <TabLine keep={keep} words={words.keeping} />
      {why ? (
        <p class="refused" role="alert">
          {words.keeping.refused[why]}
        </p>
      ) : null}
      {may_leave ? (
        <nav class="back">
          <button type="button" onClick={() => house.close()}>
            {words.keeping.evenings.back}
          </button>
        </nav>
      ) : null}
      <EveningScreens pitch={pitch} />
    </>
  );
}

function App({ keep, sync, pairing, renewal, house }: Parts): JSX.Element {
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
  if (house.pitch.value) return <Open house={house} keep={keep} />;
  return (
    <main class="pair">
      <h1>Lanework</h1>
      <EveningList house={house} words={words.keeping} language={language} />
      <ToldLines keep={keep} words={words.keeping} />
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
  const house = openHouse(keep, sync);
  await house.look();
  await house.resume();
  render(<App keep={keep} sync={sync} pairing={pairing} renewal={renewal} house={house} />, into);
  keep.packages_changed.subscribe(() => void house.look());
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
