// The squads: of those that the players' sheet names, each with its house routine, its place and the evenings of its week.
import { list } from "../../shared/words/words.ts";
import { Choice } from "../people/choice.tsx";
import { undo } from "../shell/undo.ts";
import { clashesOf } from "./clashes.ts";
import { change, type Content, contentOf, draftsAsTheyAre, paths, remove, write } from "./club_draft.ts";
import { kClub } from "./club_step.tsx";
import { NumberField, TextField } from "./fields.tsx";
import { idFrom } from "./ids.ts";
import { strips, type StripRow } from "./places_step.tsx";
import { Rows, rowsOf } from "./rows.tsx";
import { kRoster, listed } from "./players_sheet.ts";
import { useCatalogue } from "../drills/catalogue.ts";
import { ownRoutines } from "./routine/house_routines.ts";
import { many, say } from "./words.ts";

// The shipped ones, with the first age that each is written for (catalogue/routines).
const kRoutines = [["first-steps", 8], ["early-teens", 11], ["mid-teens", 14], ["older", 16], ["hall", 10], ["long-practice", 12]] as const;
// What most squads have in a bag: without cones there is no lane, and what needs a ball or a mat is left out (own judgement).
const kUsualKit: Content = { cones: 16, balls: 10, mats: 0 };
const kWeekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] as const;

const squadFiles = (): string[] => paths.value.filter((path) => path.startsWith("squads/") && contentOf(path));

// 12 of 'U13' or 'Under 13': they are under that age.
export function ageIn(name: string): number | undefined {
  const under = /\bu(?:nder)?[- ]?(\d{1,2})\b/i.exec(name)?.[1];
  return under === undefined ? undefined : Math.min(19, Math.max(8, Number(under) - 1));
}

function routineFor(age: number | undefined): string {
  const fits = kRoutines.slice(0, 4).filter(([, from]) => from <= (age ?? 11));
  return fits.at(-1)?.[0] ?? "first-steps";
}

const stripFile = (strip: StripRow | undefined): string | undefined => (strip?.file ? `../${strip.file}` : undefined);

// One after the other on the place that they share, half an hour each, from Tuesday on (own judgement): so that every squad
// has lanes before anybody has typed when it really trains.
const kFirstStart = 17 * 60;
const kStartsADay = 6;
function firstEvening(number: number): Content {
  const at = kFirstStart + 30 * (number % kStartsADay);
  const start = `${String(Math.floor(at / 60)).padStart(2, "0")}:${String(at % 60).padStart(2, "0")}:00`;
  return { weekday: kWeekdays[1 + (Math.floor(number / kStartsADay) % 4)], start, minutes: 20 };
}

function makeSquads(names: string[]): void {
  const taken = squadFiles().map((path) => path.slice("squads/".length, -".toml".length));
  for (const [number, name] of names.entries()) {
    const id = idFrom(name, taken);
    taken.push(id);
    const strip = stripFile(strips()[0]);
    const content: Content = {
      club: contentOf(kClub)?.name ?? "", name, roster: `../${kRoster}`, in_roster: name, routine: routineFor(ageIn(name)), kit: kUsualKit, week: [firstEvening(number)],
      ...(strip ? { strip } : {}),
    };
    write(`squads/${id}.toml`, { content });
  }
}

// The shipped ones, the club's own, and what the file says where it is neither.
function routineChoices(now: unknown): [string, string][] {
  const known: [string, string][] = [...ownRoutines().map(({ named, routine }): [string, string] => [named, routine.name]), ...kRoutines.map(([id]): [string, string] => [id, say(`routine.${id}`)])];
  const said = String(now ?? "");
  return known.some(([named]) => named === said) ? known : [...known, [said, said]];
}

export function SquadsStep() {
  useCatalogue();
  const files = squadFiles();
  const known = new Set(files.map((path) => contentOf(path)?.in_roster));
  const fresh = [...listed.value.keys()].filter((name) => !known.has(name));
  return (
    <>
      <p>{say("squad.what")}</p>
      {fresh.length > 0 ? (
        <button type="button" class="main" onClick={() => makeSquads(fresh)}>
          {many("make", fresh.length)}
        </button>
      ) : null}
      {files.length === 0 && fresh.length === 0 ? <p>{say("squad.none")}</p> : null}
      <Clashes files={files} />
      {files.map((path) => (
        <SquadForm key={path} path={path} open={files.length < 4} />
      ))}
    </>
  );
}

const kMostClashes = 6;

function Clashes({ files }: { files: string[] }) {
  const clashes = clashesOf(files.map((path) => contentOf(path) ?? {}));
  return (
    <div role="status" class="clashes">
      {clashes.slice(0, kMostClashes).map(({ place, weekday, start, squads }) => (
        <p key={`${place} ${weekday} ${start}`}>
          <bdi>{say("squad.clash", { place, day: say(`weekday.${weekday as (typeof kWeekdays)[number]}`), start, squads: list(squads) })}</bdi>
        </p>
      ))}
      {clashes.length > kMostClashes ? <p>{many("more_clashes", clashes.length - kMostClashes)}</p> : null}
    </div>
  );
}

// 'Early teens, from 11; North end; Tuesday 18:00, 20 min and Thursday 18:00, 20 min'
function factsOf(squad: Content, places: [string, string][]): string {
  const routine = routineChoices(squad.routine).find(([named]) => named === squad.routine)?.[1];
  const place = places.find(([file]) => file === squad.strip)?.[1];
  const evenings = rowsOf(squad.week).flatMap(({ weekday, start, minutes }) => {
    const day = kWeekdays.find((one) => one === weekday);
    return day ? [say("squad.evening_is", { day: say(`weekday.${day}`), start: String(start ?? "").slice(0, 5), minutes: Number(minutes ?? 0) })] : [];
  });
  return [routine ?? "", place ?? "", list(evenings)].filter((one) => one !== "").join("; ");
}

function SquadForm({ path, open }: { path: string; open: boolean }) {
  const squad = contentOf(path) ?? {};
  const set = (keys: Content) => change(path, keys);
  const places = strips().flatMap((strip): [string, string][] => {
    const file = stripFile(strip);
    return file ? [[file, String(contentOf(strip.file!)?.name ?? strip.id)]] : [];
  });
  const kit = (squad.kit ?? {}) as Content;
  const takeOut = () => {
    const restore = draftsAsTheyAre();
    remove(path);
    undo.offer({ words: say("squad.is_out", { squad: String(squad.name ?? path) }), undo: restore });
  };
  const setKit = (key: string) => (count: number | undefined) => set({ kit: { ...kit, [key]: count ?? 0 } });
  return (
    <details class="sheet squad-form" open={open}>
      <summary>
        <bdi>{String(squad.name ?? path)}</bdi> <bdi class="soft">{factsOf(squad, places)}</bdi>
      </summary>
      <TextField label={say("squad.name")} value={squad.name} onChange={(name) => set({ name })} />
      <div class="row top">
        <Choice
          label={say("squad.routine")}
          value={String(squad.routine ?? "")}
          options={routineChoices(squad.routine)}
          onChange={(routine) => set({ routine })}
        />
        <Choice label={say("squad.place")} value={String(squad.strip ?? "")} options={squad.strip ? places : [["", "—"], ...places]} onChange={(strip) => set({ strip: strip || undefined })} />
      </div>
      <fieldset class="one-row row top">
        <legend>{say("squad.kit")}</legend>
        <NumberField label={say("squad.cones")} value={kit.cones} least={0} most={500} onChange={setKit("cones")} />
        <NumberField label={say("squad.balls")} value={kit.balls} least={0} most={200} onChange={setKit("balls")} />
        <NumberField label={say("squad.mats")} value={kit.mats} least={0} most={200} onChange={setKit("mats")} />
      </fieldset>
      <Evenings week={rowsOf(squad.week)} onChange={(week) => set({ week })} />
      <Matches matches={rowsOf(squad.match)} onChange={(match) => set({ match })} />
      <p>
        <button type="button" onClick={takeOut}>
          {say("squad.away_with_it")}
        </button>
      </p>
    </details>
  );
}

function Evenings({ week, onChange }: { week: Content[]; onChange: (week: Content[]) => void }) {
  return (
    <Rows
      rows={week}
      legend={(number) => say("squad.evening", { number })}
      add={say("squad.add")}
      fresh={{ weekday: "thursday", start: "18:00:00", minutes: 20 }}
      onChange={onChange}
      fields={(one, set) => (
        <>
          <Choice label={say("squad.weekday")} value={String(one.weekday ?? "")} options={kWeekdays.map((day) => [day, say(`weekday.${day}`)])} onChange={(weekday) => set({ weekday })} />
          <TextField label={say("squad.start")} type="time" value={String(one.start ?? "").slice(0, 5)} onChange={(start) => set({ start: `${start}:00` })} />
          <NumberField label={say("squad.minutes")} value={one.minutes} least={5} most={60} onChange={(minutes) => set({ minutes })} />
        </>
      )}
    />
  );
}

// A match without a kick-off takes the evening of its day; one elsewhere takes no place of the club's.
function Matches({ matches, onChange }: { matches: Content[]; onChange: (matches: Content[]) => void }) {
  return (
    <Rows
      rows={matches}
      legend={(number) => say("match.one", { number })}
      add={say("match.add")}
      fresh={{}}
      onChange={onChange}
      fields={(one, set) => (
        <>
          <TextField label={say("match.date")} type="date" value={one.date} onChange={(date) => set({ date })} />
          <TextField label={say("match.start")} type="time" value={String(one.start ?? "").slice(0, 5)} onChange={(start) => set({ start: start === "" ? undefined : `${start}:00` })} />
          <TextField label={say("match.opponent")} value={one.opponent} onChange={(opponent) => set({ opponent: opponent === "" ? undefined : opponent })} />
          <label class="tick">
            <input type="checkbox" checked={one.away === true} onChange={(event) => set({ away: event.currentTarget.checked || undefined })} />
            {say("match.away")}
          </label>
        </>
      )}
    />
  );
}
