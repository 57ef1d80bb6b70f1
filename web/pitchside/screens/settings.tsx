// How this phone speaks, sounds and looks.
import { say, type Language } from "../words/words.ts";
import { CloseButton, Head, Tick, Toggle } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";
import type { Preferences } from "./preferences.ts";

const kTicks = ["voice", "sound", "vibration", "sun", "left_handed", "still"] as const satisfies (keyof Preferences)[];
const kLanguages: Record<Language, string> = { en: "English", es: "Español" };

export function SettingsScreen({ pitch }: { pitch: Pitch }) {
  const preferences = pitch.preferences.value;
  const set = (changed: Partial<Preferences>) => (pitch.preferences.value = { ...preferences, ...changed });
  return (
    <>
      <Head title={say("settings.title")}>
        <CloseButton pitch={pitch} />
      </Head>
      <main>
        <div class="ticks">
          {kTicks.map((each) => (
            <Tick key={each} label={say(`settings.${each}`)} on={preferences[each]} onChange={(on) => set({ [each]: on })} />
          ))}
        </div>
        <h2>{say("settings.language")}</h2>
        <div class="row" role="group" aria-label={say("settings.language")}>
          {(Object.keys(kLanguages) as Language[]).map((each) => (
            <Toggle key={each} label={kLanguages[each]} on={preferences.language === each} onChange={() => set({ language: each })} />
          ))}
        </div>
        {pitch.changeCode && (
          <>
            <h2>{say("keeping.lock.code")}</h2>
            <button type="button" onClick={() => (pitch.overlay.value = "change-code")}>
              {say("keeping.lock.change")}
            </button>
          </>
        )}
        <h2>{say("first.title")}</h2>
        <button type="button" onClick={() => (pitch.overlay.value = "first-evening")}>
          {say("first.again")}
        </button>
      </main>
    </>
  );
}
