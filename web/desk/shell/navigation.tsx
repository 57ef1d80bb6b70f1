// Where one can go, in words: a column beside the screen where it is wide, above it where not.
import { ask } from "../api/ask.ts";
import { me } from "../api/coming_in.ts";
import { language } from "../../shared/words/words.ts";
import { named } from "./parts.tsx";
import { withoutNames } from "./preferences.ts";
import { hashOf, route } from "./route.ts";
import { screensOf } from "./screens.ts";
import { say } from "./words.ts";

export function Navigation() {
  const who = me.value;
  const here = route.value?.screen;
  return (
    <nav class="places" aria-label={say("places")}>
      <p class="mark">Lanework</p>
      <ul>
        {(who ? screensOf(who.role) : [])
          .filter((name) => name !== "account")
          .map((name) => (
            <li key={name}>
              <a href={hashOf(name)} aria-current={name === here ? "page" : undefined}>
                {say(`screen.${name}`)}
              </a>
            </li>
          ))}
      </ul>
      <div class="own">
        <button type="button" class="quiet" lang={language.value === "en" ? "es" : "en"} onClick={() => (language.value = language.value === "en" ? "es" : "en")}>
          {say("other_language")}
        </button>
        <button type="button" class="quiet" aria-pressed={withoutNames.value} onClick={() => (withoutNames.value = !withoutNames.value)}>
          {say("without_names")}
        </button>
        {who ? (
          <>
            <a href={hashOf("account")} aria-current={here === "account" ? "page" : undefined}>
              <bdi>{named(who.name, say("screen.account"))}</bdi>
            </a>
            <button type="button" class="quiet" onClick={() => void signOut()}>
              {say("sign_out")}
            </button>
          </>
        ) : null}
      </div>
    </nav>
  );
}

// Whatever was read goes with the page.
async function signOut(): Promise<void> {
  await ask("sign-out", {});
  location.replace(location.pathname);
}
