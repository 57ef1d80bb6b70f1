// The house routines, by what the squads go by: shipped ones, and the club's own, which are changed here.
import { list } from "../../../shared/words/words.ts";
import { useCatalogue } from "../../drills/catalogue.ts";
import { agesInWords } from "../../drills/spoken.ts";
import { announce } from "../../shell/announce.ts";
import { go, hashOf } from "../../shell/route.ts";
import { undo } from "../../shell/undo.ts";
import { contentOf, draftsAsTheyAre } from "../club_draft.ts";
import { EditRoutine } from "./edit_routine.tsx";
import { allRoutines, beginOwn, endOwn, type HouseRoutine, isForMatches, shippedFor, squadsBy } from "./house_routines.ts";
import { many, say } from "./words.ts";
import en from "./words/en.json";

export function RoutinesStep({ routine }: { routine: string | undefined }) {
  useCatalogue();
  if (routine !== undefined) return <EditRoutine id={routine} />;
  const all = allRoutines().sort((one, other) => Number(isForMatches(one)) - Number(isForMatches(other)) || one.routine.ages.from - other.routine.ages.from);
  const used = all.filter(({ named }) => squadsBy(named).length > 0);
  const others = all.filter((one) => !used.includes(one));
  return (
    <>
      <p>{say("what")}</p>
      {all.length === 0 ? <p>{say("none")}</p> : null}
      <Part title={say("in_use")} routines={used} />
      <Part title={say("not_in_use")} routines={others} />
    </>
  );
}

function Part({ title, routines }: { title: string; routines: HouseRoutine[] }) {
  if (routines.length === 0) return null;
  return (
    <section class="sheet">
      <h2>{title}</h2>
      <ul class="routines">
        {routines.map((one) => (
          <RoutineRow key={one.named} one={one} />
        ))}
      </ul>
    </section>
  );
}

// The shipped ones have names in both languages; what the club wrote stays as it is.
export function nameOfRoutine({ path, routine }: HouseRoutine): string {
  return path === undefined && Object.hasOwn(en.shipped, routine.id) ? say(`shipped.${routine.id as keyof typeof en.shipped}`) : routine.name;
}

const nameOfSquad = (path: string): string => String(contentOf(path)?.name ?? path);

function RoutineRow({ one }: { one: HouseRoutine }) {
  const { path, routine } = one;
  const squads = squadsBy(one.named);
  const name = nameOfRoutine(one);
  const own_name = say("own_name", { name });
  const begin = () => {
    const id = beginOwn(one, own_name);
    announce(say("begun", { name: own_name }));
    go(hashOf("set-up", "routines", { routine: id }));
  };
  const end = () => {
    const shipped = shippedFor(one);
    const restore = draftsAsTheyAre();
    endOwn(one);
    const words = say("ended", { name, instead: shipped ? nameOfRoutine(shipped) : "" });
    undo.offer({ words, undo: restore });
  };
  return (
    <li>
      <div>
        <h3>
          <bdi>{name}</bdi> {path ? <span class="soft">({say("own")})</span> : null}
        </h3>
        <p class="soft">
          {say("facts", { ages: agesInWords(routine.ages), minutes: routine.minutes, drills: many("drills", routine.drill.length) })}
          {isForMatches(one) ? `; ${say("for_matches").toLowerCase()}` : ""}
        </p>
        <p>
          <bdi>{squads.length === 0 ? say("unused") : list(squads.slice(0, 8).map(nameOfSquad).concat(squads.length > 8 ? ["…"] : []))}</bdi>
        </p>
      </div>
      <p class="row">
        {path ? (
          <>
            <a class="as-button" href={hashOf("set-up", "routines", { routine: routine.id })} aria-label={say("open_of", { name })}>
              {say("open")}
            </a>
            <button type="button" onClick={end}>
              {say("end")}
            </button>
          </>
        ) : (
          <button type="button" aria-label={say("begin_of", { name })} onClick={begin}>
            {say("begin")}
          </button>
        )}
      </p>
    </li>
  );
}
