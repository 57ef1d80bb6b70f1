// A newer version of the app: fetched in the background, it waits; the app changes to it when no session is running, by
// loading the page anew under the new service worker.
import { type ReadonlySignal, signal } from "@preact/signals";

export interface Renewal {
  waits: ReadonlySignal<boolean>; // a newer version is ready
  look(): void; // is there a newer one? (the server said 'update-first')
  takeOver(): void; // only while no session is running
}

export function watchForRenewal(path: string): Renewal {
  const waits = signal(false);
  let asked = false;
  let registration: ServiceWorkerRegistration | undefined;

  function watch(found: ServiceWorkerRegistration): void {
    registration = found;
    const seen = (): void => {
      waits.value = found.waiting !== null && found.active !== null;
    };
    found.addEventListener("updatefound", () => found.installing?.addEventListener("statechange", seen));
    seen();
  }

  navigator.serviceWorker?.register(path).then(watch, () => undefined); // without one the app works, with signal
  navigator.serviceWorker?.addEventListener("controllerchange", () => {
    if (asked) location.reload();
  });
  return {
    waits,
    look: () => void registration?.update().catch(() => undefined),
    takeOver() {
      asked = true;
      registration?.waiting?.postMessage("take-over");
    },
  };
}
