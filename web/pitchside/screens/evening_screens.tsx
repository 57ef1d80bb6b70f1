// The screens of one evening: which one stands, and how they look on this phone.
import { useEffect, useRef } from "preact/hooks";
import { ChangeCodeScreen } from "./change_code.tsx";
import { FinishedScreen } from "./finished.tsx";
import { FirstEveningScreen } from "./first_evening.tsx";
import { HurtScreen } from "./someone_hurt.tsx";
import { LayOutScreen } from "./lay_out.tsx";
import type { Pitch } from "./pitch.ts";
import { RunScreen } from "./run.tsx";
import { SettingsScreen } from "./settings.tsx";
import { SlipScreen } from "./slip.tsx";
import { TonightScreen } from "./tonight.tsx";
import { useWayBack } from "./way_back.ts";
import { WrapUpScreen } from "./wrap_up.tsx";

function Standing({ pitch }: { pitch: Pitch }) {
  switch (pitch.overlay.value) {
    case "hurt":
      return <HurtScreen pitch={pitch} />;
    case "slip":
      return <SlipScreen pitch={pitch} />;
    case "settings":
      return <SettingsScreen pitch={pitch} />;
    case "change-code":
      return <ChangeCodeScreen pitch={pitch} />;
    case "first-evening":
      return <FirstEveningScreen pitch={pitch} />;
    case "none":
      break;
  }
  switch (pitch.evening.value.screen) {
    case "tonight":
      return <TonightScreen pitch={pitch} />;
    case "lay-out":
      return <LayOutScreen pitch={pitch} />;
    case "run":
      return <RunScreen pitch={pitch} />;
    case "wrap-up":
      return <WrapUpScreen pitch={pitch} />;
    case "finished":
      return <FinishedScreen pitch={pitch} />;
  }
}

export function EveningScreens({ pitch }: { pitch: Pitch }) {
  const { sun, left_handed, still, language } = pitch.preferences.value;
  const screen = `${pitch.overlay.value} ${pitch.evening.value.screen}`;
  const whole = useRef<HTMLDivElement>(null);
  const before = useRef(screen);
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  useWayBack(pitch.overlay.value !== "none", () => (pitch.overlay.value = "none"));
  // A new screen is read from its top.
  useEffect(() => {
    if (before.current === screen) return;
    before.current = screen;
    window.scrollTo(0, 0);
    whole.current?.querySelector<HTMLElement>("h1")?.focus();
  }, [screen]);
  return (
    <div
      ref={whole}
      class="pitchside"
      lang={language}
      data-theme={sun ? "sun" : "paper"}
      data-hand={left_handed ? "left" : "right"}
      data-still={still ? "yes" : "no"}
    >
      <Standing pitch={pitch} />
    </div>
  );
}
