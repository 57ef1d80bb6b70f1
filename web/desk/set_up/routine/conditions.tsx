// Whom a routine is counted for: one of the squads that go by it, with its place, its evenings and its minutes, or an usual
// squad of the youngest age. Minutes and players can be tried.
import { useState } from "preact/hooks";
import type { DoorTable } from "../../../shared/engine/door_value.ts";
import { Choice } from "../../people/choice.tsx";
import { type Content, contentOf } from "../club_draft.ts";
import { NumberField } from "../fields.tsx";
import { kFirstPlace } from "../places_step.tsx";
import { listed } from "../players_sheet.ts";
import { rowsOf } from "../rows.tsx";
import { ageIn } from "../squads_step.tsx";
import type { Routine } from "./routine_document.ts";
import type { Conditions } from "./routine_trial.ts";
import { many, say } from "./words.ts";

const kUsualPlayers = 14;
const kPlayers: [number, number] = [2, 40];
const kAllKit = { cones: 100, balls: 40, mats: 40 }; // what is not there is the evening's matter, not the routine's

export interface CountedFor extends Conditions {
  evenings: number;
}

function playersOf(squad: Content): number {
  if (typeof squad.expected_turnout === "number") return squad.expected_turnout;
  const count = listed.value.get(String(squad.in_roster)) ?? kUsualPlayers;
  return Math.min(kPlayers[1], Math.max(kPlayers[0], count));
}

function placeOf(squad: Content): DoorTable {
  const file = typeof squad.strip === "string" ? squad.strip.replace("../", "") : "";
  const { venue: _, ...place } = contentOf(file) ?? { name: "-", ...kFirstPlace };
  return place as DoorTable;
}

function conditionsOf(squad: Content, routine: Routine): CountedFor {
  const week = rowsOf(squad.week);
  const minutes = week.map((evening) => Number(evening.minutes)).filter((one) => one > 0);
  const age = typeof squad.age === "number" ? squad.age : ageIn(String(squad.name ?? ""));
  return {
    age: Math.min(19, Math.max(8, age ?? routine.ages.from)),
    players: playersOf(squad),
    minutes: minutes.length > 0 ? Math.min(...minutes) : routine.minutes,
    evenings: Math.max(1, week.length),
    strip: placeOf(squad),
    kit: kAllKit,
  };
}

interface Tried {
  squad: string;
  minutes?: number | undefined;
  players?: number | undefined;
}

export interface Counting {
  squads: string[]; // files
  tried: Tried;
  counted: CountedFor;
  use(tried: Tried): void;
}

export function useConditions(squads: string[], routine: Routine): Counting {
  const [tried, use] = useState<Tried>({ squad: squads[0] ?? "" });
  const usual = conditionsOf(contentOf(tried.squad) ?? {}, routine);
  const counted = { ...usual, minutes: tried.minutes ?? usual.minutes, players: tried.players ?? usual.players };
  return { squads, tried, counted, use };
}

export function ConditionsForm({ squads, tried, counted, use }: Counting) {
  const squad = contentOf(tried.squad) ?? {};
  const place = contentOf(String(squad.strip ?? "").replace("../", ""));
  return (
    <section class="row top conditions">
      {squads.length > 0 ? (
        <Choice label={say("counted")} value={tried.squad} options={squads.map((path) => [path, String(contentOf(path)?.name ?? path)])} onChange={(chosen) => use({ squad: chosen })} />
      ) : null}
      <NumberField label={say("minutes_there")} value={counted.minutes} least={5} most={60} onChange={(minutes) => use({ ...tried, minutes: inBounds(minutes, 5, 60) })} />
      <NumberField label={say("players")} value={counted.players} least={kPlayers[0]} most={kPlayers[1]} onChange={(players) => use({ ...tried, players: inBounds(players, ...kPlayers) })} />
      <p class="soft">
        <bdi>{squads.length > 0 ? say("squad_facts", { evenings: many("evenings", counted.evenings), place: place ? String(place.name ?? "") : say("no_place") }) : say("nobody", { age: counted.age })}</bdi>
      </p>
    </section>
  );
}

const inBounds = (value: number | undefined, least: number, most: number): number | undefined => (value === undefined || value < least ? undefined : Math.min(most, Math.round(value)));
