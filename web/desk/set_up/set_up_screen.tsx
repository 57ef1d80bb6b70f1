// From nothing to a club that plans: its season, its places, its players, its squads. What is typed is checked and saved all
// together, since a squad without players, or a season without squads, is no club yet.
import { useEffect, useState } from "preact/hooks";
import { type Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { Head } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { readClub } from "./club_draft.ts";
import { ClubStep } from "./club_step.tsx";
import { watchForLeaving } from "./leaving.ts";
import { PlacesStep } from "./places_step.tsx";
import { PlayersStep } from "./players_step.tsx";
import { SaveBar, type Step } from "./save_bar.tsx";
import { SquadsStep } from "./squads_step.tsx";
import { RoutinesStep } from "./routine/routines_step.tsx";
import { ThenStep } from "./then_step.tsx";
import { TurnStep } from "./turn/turn_step.tsx";
import { say } from "./words.ts";

const kSteps = { season: ClubStep, places: PlacesStep, players: PlayersStep, squads: SquadsStep, routines: RoutinesStep, then: ThenStep, turn: TurnStep };
const kNames = Object.keys(kSteps) as Step[];

watchForLeaving(); // as long as the page lives: drafts outlive this screen

const isStep = (word: string | undefined): word is Step => word !== undefined && Object.hasOwn(kSteps, word);

export function Screen({ route }: ScreenProps<"set-up">) {
  const here: Step = isStep(route.step) ? route.step : "season";
  const [state, setState] = useState<"waits" | "here" | Refusal>("waits");
  const read = async () => setState((await readClub()) ?? "here");
  useEffect(() => void read(), []);
  const Shown = kSteps[here];
  return (
    <>
      <Head title={say("title")}>
        <p>{say("what")}</p>
      </Head>
      <nav class="parts" aria-label={say("steps")}>
        {kNames.map((name) => (
          <a key={name} href={hashOf("set-up", name)} aria-current={name === here ? "step" : undefined}>
            {say(`step.${name}`)}
          </a>
        ))}
      </nav>
      {state === "waits" ? <p class="waiting screen-tall" role="status">…</p> : null}
      {state === "here" ? (
        <>
          <Shown routine={route.further["routine"]} />
          <SaveBar here={here} next={here === "then" ? undefined : kNames[kNames.indexOf(here) + 1]} />
        </>
      ) : null}
      {typeof state === "object" ? <Refused refusal={state} again={() => void read()} /> : null}
    </>
  );
}
