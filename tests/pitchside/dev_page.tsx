// The screens over a sample package, with the real worker and the real door. What was kept lies in the page's session,
// so that a reload goes on; what was entered lies in window.entered for the test to read.
import { signal } from "@preact/signals";
import { render } from "preact";
import { openEngine } from "../../web/shared/engine/engine.ts";
import type { NewEntry } from "../../web/pitchside/keep/entry.ts";
import type { EveningState } from "../../web/pitchside/evening/evening_state.ts";
import { openEvening } from "../../web/pitchside/evening/open_evening.ts";
import "../../web/pitchside/look/look.css";
import type { EveningPackage } from "../../web/pitchside/package/evening_package.ts";
import { EveningScreens } from "../../web/pitchside/screens/evening_screens.tsx";
import { openPitch, type Pitch } from "../../web/pitchside/screens/pitch.ts";
import { firstPreferences } from "../../web/pitchside/screens/preferences.ts";

declare global {
  interface Window {
    entered: NewEntry[];
    pitch: Pitch;
    sent: () => void;
  }
}

const pack = (await (await fetch("/package.json")).json()) as EveningPackage;
const first = pack.evenings[0];
if (!first) throw new Error("the sample package has no evening");
const asked = new URLSearchParams(location.search);
const kept = sessionStorage.getItem("evening");
window.entered = JSON.parse(sessionStorage.getItem("entered") ?? "[]") as NewEntry[];
const waiting = signal(0); // what the club does not have: here only the test sends
window.sent = () => (waiting.value = 0);
window.pitch = openPitch({
  pack,
  engine: openEngine({ worker: "/worker.js", door: "/lanework.wasm" }),
  evening: kept ? (JSON.parse(kept) as EveningState) : openEvening(pack, first),
  preferences: {
    ...firstPreferences(["en"]),
    sun: asked.has("sun"),
    left_handed: asked.has("left"),
    language: asked.get("language") === "es" ? "es" : "en",
  },
  waiting,
  renderings: { es: "/drills-es.json" },
  keep(evening, entries) {
    window.entered.push(...entries);
    waiting.value += entries.length;
    sessionStorage.setItem("evening", JSON.stringify(evening));
    sessionStorage.setItem("entered", JSON.stringify(window.entered));
    const first = window.entered.length - entries.length;
    const device_time = new Date().toISOString();
    return Promise.resolve(entries.map((entry, at) => ({ ...entry, id: `entry-${first + at + 1}`, sequence: first + at + 1, device_time })));
  },
  keepPreferences() {},
  // The real lock is tried in locks.mjs and changed_code.mjs; here only the screen is looked at.
  changeCode: (old) => Promise.resolve(old === "482913" ? { opened: true } : { opened: false, wait: 30_000, left: 14 }),
});
const place = document.getElementById("evening");
if (place) render(<EveningScreens pitch={window.pitch} />, place);
