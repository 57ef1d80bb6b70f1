// The frame: where one can go, the screen, what can be taken back; and over them whatever must be answered first.
import { codeWanted, door, me } from "../api/coming_in.ts";
import { Bars } from "./bars.tsx";
import { Navigation } from "./navigation.tsx";
import { Place } from "./place.tsx";
import { SignIn } from "./sign_in.tsx";
import { StepUp } from "./step_up.tsx";
import { say } from "./words.ts";

export function Shell({ notice }: { notice?: string }) {
  const skip = (event: Event) => {
    event.preventDefault(); // an address here names a screen, not a place on it
    document.querySelector<HTMLElement>("main h1")?.focus();
  };
  return (
    <>
      {me.value ? (
        <div class="desk" inert={door.value !== "closed"}>
          <a class="skip" href="#main" onClick={skip}>
            {say("skip")}
          </a>
          <Navigation />
          <main id="main">
            <Place />
          </main>
        </div>
      ) : null}
      <Bars />
      {codeWanted.value ? <StepUp /> : null}
      {door.value === "closed" ? null : <SignIn {...(notice ? { notice } : {})} />}
    </>
  );
}
