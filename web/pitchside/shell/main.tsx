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
import { language as languageOfScreens } from "../words/words.ts";
import { NewerForm, OldFormStays } from "../keep/open_pocket.ts";
import { ChooseCode } from "./choose_code.tsx";
import { EveningList } from "./evening_list.tsx";
import { holdsUntil } from "./evenings.ts";
import { RenewalLine, SyncLine, TabLine, ToldLines } from "./home.tsx";
import type { KeepingWords } from "./keeping_words.ts";
import { localeFor } from "./locale.ts";
import { LockScreen } from "./lock_screen.tsx";
import { watchLock } from "./lock_watch.ts";
import { type House, keptPreferences, openHouse } from "./open_house.ts";
import { serviceWorker } from "./places.ts";
import { type Renewal, watchForRenewal } from "./renewal.ts";
import { Rescue } from "./rescue.tsx";
import { UpdateApp } from "./update_app.tsx";

const secret = takeSecret(location, history); // before anything else could read the address

const { language } = keptPreferences();
const locale = localeFor(language, navigator.languages);
languageOfScreens.value = language;
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
    const back = pairs.value && device?.standing === "paired" ? () => (pairs.value = false) : undefined;
    return <PairScreen pairing={pairing} words={words.pairing} onOpen={open} onBack={back} notice={notice} />;
  }
  const lock = keep.lock.state.value;
  if (lock === "unset" && device.standing === "paired") return <ChooseCode keep={keep} words={words.keeping.lock} onChosen={() => void sync.sendNow()} />;
  if (lock === "locked" || lock === "gone") {
    return (
      <LockScreen keep={keep} words={words.keeping.lock} onNewLink={() => (pairs.value = true)}>
        <TabLine keep={keep} words={words.keeping} />
        <SyncLine sync={sync} words={words.keeping} language={locale} />
      </LockScreen>
    );
  }
  if (house.pitch.value) return <Open house={house} keep={keep} />;
  return (
    <main class="home">
      <h1>{house.evenings.value[0]?.held.package.club ?? "Lanework"}</h1>
      <ToldLines keep={keep} words={words.keeping} />
      <TabLine keep={keep} words={words.keeping} />
      <RenewalLine renewal={renewal} words={words.keeping} />
      <EveningList house={house} words={words.keeping} language={locale} />
      <SyncLine sync={sync} words={words.keeping} language={locale}>
        {lock === "open" ? (
          <button type="button" onClick={() => void keep.lockNow()}>
            {words.keeping.lock.now}
          </button>
        ) : null}
      </SyncLine>
    </main>
  );
}

// What was open closes with the lock, and is opened again by the code as it was left.
function followLock({ keep, sync, house }: Parts): void {
  let before = keep.lock.state.value;
  keep.lock.state.subscribe((state) => {
    if (state === before) return;
    before = state;
    scrollTo(0, 0);
    if (state !== "open") return house.hide();
    void house.look().then(() => house.resume());
    void sync.sendNow();
  });
}

async function start(into: HTMLElement): Promise<void> {
  const keep = await Keep.open(holdsUntil);
  const sync = new Sync(keep);
  const pairing = new Pairing(keep);
  pairs.value = secret !== undefined || keep.books.value.device === undefined;
  const renewal = watchForRenewal(serviceWorker);
  const house = openHouse(keep, sync);
  watchLock(keep);
  await house.look();
  await house.resume();
  followLock({ keep, sync, pairing, renewal, house });
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
start(into).catch((error: unknown) => {
  if (error instanceof OldFormStays) render(<Rescue waiting={error.waiting} words={words.keeping.rescue} />, into);
  else if (error instanceof NewerForm) render(<UpdateApp renewal={watchForRenewal(serviceWorker)} words={words.keeping.newer_form} />, into);
  else sayUnfit(into);
});
