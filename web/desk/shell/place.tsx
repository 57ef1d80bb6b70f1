// The screen that the address names: its piece is fetched when it is first wanted, and the focus goes to its heading.
import { useEffect, useRef, useState } from "preact/hooks";
import type { ComponentType } from "preact";
import { me } from "../api/coming_in.ts";
import { Head } from "./parts.tsx";
import { type Route, route, type ScreenName } from "./route.ts";
import { kScreens, screensOf, type ScreenProps } from "./screens.ts";
import { say } from "./words.ts";

type Loaded = { name: ScreenName; Screen: ComponentType<ScreenProps<never>> };

// The piece of a screen; undefined while it is on its way, and again if it could not be had.
function usePiece(name: ScreenName | undefined) {
  const [loaded, setLoaded] = useState<Loaded | undefined>();
  const [lost, setLost] = useState(false);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let wanted = true;
    setLost(false);
    kScreens[name!]?.load().then(
      ({ Screen }) => wanted && setLoaded({ name: name!, Screen: Screen as Loaded["Screen"] }),
      () => wanted && setLost(true),
    );
    return () => {
      wanted = false;
    };
  }, [name, tries]);
  return { Screen: loaded?.name === name ? loaded?.Screen : undefined, lost, again: () => setTries(tries + 1) };
}

const placeOf = (at: Route): string => Object.entries(at).filter(([key]) => key !== "further").map(([, value]) => value).join("/");

// Not when the desk opens: then the focus is where the browser puts it.
function useFocus(at: Route | undefined, here: boolean) {
  const before = useRef<string | undefined>(undefined);
  const place = at ? placeOf(at) : "";
  useEffect(() => {
    if (!here) return;
    const heading = document.querySelector<HTMLElement>("main h1");
    document.title = heading ? `${heading.textContent} · Lanework` : "Lanework";
    if (before.current !== undefined && before.current !== place) {
      heading?.focus({ preventScroll: true });
      window.scrollTo(0, 0);
    }
    before.current = place;
  }, [place, here]);
}

export function Place() {
  const at = route.value;
  const role = me.value?.role;
  const open = at !== undefined && role !== undefined && screensOf(role).includes(at.screen);
  const { Screen, lost, again } = usePiece(open ? at.screen : undefined);
  useFocus(at, !open || lost || Screen !== undefined);
  if (lost) {
    return (
      <>
        <Head title={say("lost.title")} />
        <p>{say("lost.what")}</p>
        <button type="button" onClick={again}>
          {say("lost.again")}
        </button>
      </>
    );
  }
  if (!open) return <Nowhere />;
  return Screen ? <Screen route={at as never} /> : <p class="waiting screen-tall" role="status">{say("opening")}</p>;
}

function Nowhere() {
  const role = me.value?.role;
  const none = role !== undefined && screensOf(role).every((name) => name === "account");
  return (
    <>
      <Head title={say(none ? "for_phones.title" : "nowhere.title")} />
      <p>{say(none ? "for_phones.what" : "nowhere.what")}</p>
    </>
  );
}
