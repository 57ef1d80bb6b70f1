// The house routines that there are: the shipped ones and the club's own in routines/, which squads go by which, and how one
// of the club's own begins and ends. Everything is a draft until it is saved with the rest of the club.
import { catalogue } from "../../drills/catalogue.ts";
import { change, contentOf, paths, remove, write } from "../club_draft.ts";
import type { Routine } from "./routine_document.ts";

export const kMatchDay = "match-day";
const kOwn = /^routines\/([a-z0-9-]+)\.toml$/;
const kOwnEnding = "-own";

export interface HouseRoutine {
  named: string; // as a squad's file names it: an id, or a file of the club's
  path?: string; // of the club's own
  routine: Routine;
}

export function shippedRoutines(): HouseRoutine[] {
  const shipped = (catalogue.value?.routines ?? []) as Routine[];
  return shipped.map((routine) => ({ named: routine.id, routine }));
}

export function ownRoutines(): HouseRoutine[] {
  return paths.value.flatMap((path) => {
    const content = kOwn.test(path) ? contentOf(path) : undefined;
    return content ? [{ named: `../${path}`, path, routine: content as unknown as Routine }] : [];
  });
}

export const allRoutines = (): HouseRoutine[] => [...ownRoutines(), ...shippedRoutines()];
export const routineNamed = (named: string): HouseRoutine | undefined => allRoutines().find((one) => one.named === named);
export const ownById = (id: string | undefined): HouseRoutine | undefined => ownRoutines().find(({ routine }) => routine.id === id);

export const isForMatches = ({ routine }: HouseRoutine): boolean => routine.id === kMatchDay || routine.id.startsWith(kMatchDay);

const squadFiles = (): string[] => paths.value.filter((path) => path.startsWith("squads/") && contentOf(path));

// Files of the squads that go by it.
export function squadsBy(named: string): string[] {
  return squadFiles().filter((path) => contentOf(path)?.routine === named || (contentOf(path)?.match_day_routine ?? kMatchDay) === named);
}

function point(squads: string[], from: string, to: string): void {
  for (const path of squads) {
    const squad = contentOf(path) ?? {};
    if (squad.routine === from) change(path, { routine: to });
    if ((squad.match_day_routine ?? kMatchDay) === from) change(path, { match_day_routine: to === kMatchDay ? undefined : to });
  }
}

// A copy to be changed, which the squads that went by the shipped one go by from now on.
export function beginOwn({ named, routine }: HouseRoutine, name: string): string {
  const taken = allRoutines().map((one) => one.routine.id);
  let id = `${routine.id}${kOwnEnding}`;
  for (let count = 2; taken.includes(id); count++) id = `${routine.id}${kOwnEnding}-${count}`;
  const path = `routines/${id}.toml`;
  const squads = squadsBy(named);
  write(path, { content: { ...structuredClone(routine), id, name } });
  point(squads, named, `../${path}`);
  return id;
}

// The shipped one that it came from, or else the one for its ages.
export function shippedFor({ routine }: HouseRoutine): HouseRoutine | undefined {
  const shipped = shippedRoutines();
  const came_from = shipped.filter(({ named }) => routine.id.startsWith(`${named}${kOwnEnding}`));
  return came_from[0] ?? shipped.find((one) => one.routine.ages.from <= routine.ages.from && one.routine.ages.to >= routine.ages.from && !isForMatches(one));
}

// Its squads go by the shipped one again.
export function endOwn(own: HouseRoutine): void {
  const instead = shippedFor(own);
  if (instead) point(squadsBy(own.named), own.named, instead.named);
  if (own.path) remove(own.path);
}

export function keepRoutine(path: string, routine: Routine): void {
  write(path, { content: routine as unknown as Record<string, unknown> });
}
