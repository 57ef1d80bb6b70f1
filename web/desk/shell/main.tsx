// Opens the desk: takes an activation link out of the address, finds out who is signed in, and shows the screen that the
// address names.
import { effect, signal } from "@preact/signals";
import { render } from "preact";
import { ask } from "../api/ask.ts";
import { cameIn, me } from "../api/coming_in.ts";
import { Activate, takeActivation } from "./activate.tsx";
import { watchForUndo } from "./bars.tsx";
import { readPreferences } from "./preferences.ts";
import { atTheDoor, go, hashOf, route } from "./route.ts";
import { fetchAhead, screensOf } from "./screens.ts";
import { Shell } from "./shell.tsx";
import { say } from "./words.ts";

const kFaceMilliseconds = 500; // own judgement

const link = signal(takeActivation(location, history)); // before anything else could read the address
const activated = signal<string | undefined>(undefined);

readPreferences();
watchForUndo();

// The face comes beside the page; words that are drawn without it first would move. Where it does not come, they are not kept back for long.
async function faceIsThere(): Promise<void> {
  const loaded = Promise.allSettled([document.fonts.load("400 1rem B612"), document.fonts.load("700 1rem B612")]);
  await Promise.race([loaded, new Promise((late) => setTimeout(late, kFaceMilliseconds))]);
}

async function findOut(): Promise<void> {
  const [answer] = await Promise.all([ask("me", {}), faceIsThere()]);
  if (answer.ok) cameIn(answer.said);
}

// Without an address: the first screen that this role has.
effect(() => {
  const first = me.value && screensOf(me.value.role)[0];
  if (first && atTheDoor.value) go(hashOf(first), { replace: true });
});

function Desk() {
  if (link.value === undefined) return <Shell {...(activated.value ? { notice: say("activate.done", { name: activated.value }) } : {})} />;
  const done = (sign_in: string) => {
    activated.value = sign_in;
    link.value = undefined;
    void findOut();
  };
  return <Activate link={link.value} done={done} />;
}

render(<Desk />, document.getElementById("app")!);
if (link.peek() === undefined) {
  fetchAhead(route.peek()?.screen); // beside the question who is signed in, not after it
  void findOut();
}
addEventListener("hashchange", () => {
  const another = takeActivation(location, history);
  if (another !== undefined) link.value = another;
});
