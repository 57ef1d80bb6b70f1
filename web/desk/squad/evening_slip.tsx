// Who does something else, and who stands with whom: counts first, names one step deeper. Two who are not to stand together
// are kept apart on the evening as it is tried, and for the squad once that is kept.
import { useEffect, useState } from "preact/hooks";
import type { SlipAnswer, SlipGroup, SlipSwap } from "../../shared/engine/answers.ts";
import type { DoorTable } from "../../shared/engine/door_value.ts";
import { swapTold } from "../../shared/evening/reason_words.ts";
import { list } from "../../shared/words/words.ts";
import { withoutNames } from "../shell/preferences.ts";
import { doseWords } from "./dose_words.ts";
import { nameOfDrill, names } from "./drill_names.ts";
import { KeepButton } from "./keep_button.tsx";
import { readBooks } from "./keep_standing.ts";
import { useSlip } from "./slip.ts";
import { countsOf, pairsIn } from "./slip_counts.ts";
import { keptApart, keyOfPair, pairOfKey, type Content } from "./standing.ts";
import type { Trial } from "./trial.ts";
import { keptApart as apartInTry, type PocketEvening } from "./tried.ts";
import { many, say } from "./words.ts";

type NameOf = (player: string) => string;

// Each name may turn the direction of writing: not beyond itself (Unicode, FSI and PDI).
const apart = (name: string): string => `\u2068${name}\u2069`;
const namesOf = (players: string[], nameOf: NameOf): string => list(players.map((player) => apart(nameOf(player))));

function nameOfPlayers({ documents: { roster } }: PocketEvening): NameOf {
  const known = new Map(roster.map((player) => [String(player["id"]), String(player["name"])]));
  return (player) => known.get(player) ?? player;
}

function Swap({ swap, nameOf }: { swap: SlipSwap; nameOf: NameOf }) {
  return (
    <li>
      <strong>
        <bdi>{nameOf(swap.player)}</bdi>
      </strong>
      : {say(`slip.${swap.takes_part}`)}
      {swap.instruction && swap.instruction !== swap.takes_part && <span lang="en">; {swap.instruction}</span>}
      {swap.swaps.length > 0 && (
        <ul>
          {swap.swaps.map(({ instead_of, does, kind, instruction }) => {
            const told = swapTold(kind, does, does ? doseWords(does) : "", instruction, names);
            return (
              <li key={instead_of}>
                {say("slip.instead_of", { drill: nameOfDrill(instead_of) })} <span lang={told.english ? "en" : undefined}>{told.words}</span>
              </li>
            );
          })}
        </ul>
      )}
    </li>
  );
}

function Group({ group: { players, non_contact }, nameOf, keep_apart }: { group: SlipGroup; nameOf: NameOf; keep_apart: (pair: string) => void }) {
  return (
    <li class="group">
      <span>
        {namesOf(players, nameOf)}
        {non_contact && <span class="soft">, {say("slip.non_contact")}</span>}
      </span>
      {pairsIn(players).map(([one, other]) => (
        <button key={one + other} type="button" class="quiet not-on-paper" aria-label={say("slip.apart_of", { one: apart(nameOf(one)), other: apart(nameOf(other)) })} onClick={() => keep_apart(keyOfPair(one, other))}>
          {players.length === 2 ? say("slip.apart") : say("slip.apart_of", { one: apart(nameOf(one)), other: apart(nameOf(other)) })}
        </button>
      ))}
    </li>
  );
}

// Those that the squad's document keeps apart already, each with its way back.
function KeptApart({ squad, nameOf, kept }: { squad: string; nameOf: NameOf; kept: () => void }) {
  const [pairs, setPairs] = useState<string[]>([]);
  const read = () => void readBooks(squad).then((books) => Array.isArray(books) && setPairs(keptApart((books.find(({ path }) => path === `squads/${squad}.toml`)?.content ?? {}) as Content)));
  useEffect(read, [squad]);
  if (pairs.length === 0) return null;
  return (
    <>
      <h4>{say("slip.kept_apart")}</h4>
      <ul>
        {pairs.map((pair) => {
          const [one, other] = pairOfKey(pair);
          const label = say("slip.together_of", { one: apart(nameOf(one)), other: apart(nameOf(other)) });
          const again = () => {
            read();
            kept();
          };
          return (
            <li key={pair} class="group">
              <span>{namesOf([one, other], nameOf)}</span>
              <KeepButton squad={squad} wanted={{ apart: { [pair]: false } }} words={say("slip.together")} label={label} done={say("slip.together_done")} plan={again} />
            </li>
          );
        })}
      </ul>
    </>
  );
}

interface NamesProps {
  squad: string;
  slip: SlipAnswer;
  nameOf: NameOf;
  trial: Trial;
  kept: () => void;
}

function Names({ squad, slip, nameOf, trial, kept }: NamesProps) {
  const [opened, setOpened] = useState(false);
  const others = slip.swaps.filter(({ takes_part }) => takes_part !== "joins in");
  const { apart } = trial.tried;
  return (
    <>
      {others.length > 0 && (
        <details>
          <summary>{say("slip.names_swaps")}</summary>
          <ul>
            {others.map((swap) => (
              <Swap key={swap.player} swap={swap} nameOf={nameOf} />
            ))}
          </ul>
        </details>
      )}
      <details onToggle={(event) => setOpened(event.currentTarget.open)}>
        <summary>{say("slip.names_pairs")}</summary>
        <ul>
          {slip.groups.map((group) => (
            <Group key={group.players.join()} group={group} nameOf={nameOf} keep_apart={(pair) => trial.try(apartInTry(trial.tried, pair, true))} />
          ))}
          {slip.alone.map((player) => (
            <li key={player}>
              <bdi>{nameOf(player)}</bdi>, {say("slip.alone")}
            </li>
          ))}
        </ul>
        {apart.length > 0 && (
          <>
            <h4>{say("slip.apart_here")}</h4>
            <ul>
              {apart.map((pair) => (
                <li key={pair} class="group">
                  <span>{namesOf(pairOfKey(pair), nameOf)}</span>
                  <button type="button" class="quiet" onClick={() => trial.try(apartInTry(trial.tried, pair, false))}>
                    {say("slip.together")}
                  </button>
                </li>
              ))}
            </ul>
          </>
        )}
        {opened && <KeptApart squad={squad} nameOf={nameOf} kept={kept} />}
      </details>
    </>
  );
}

interface EveningSlipProps {
  squad: string;
  evening: PocketEvening;
  catalogue: DoorTable;
  trial: Trial;
  kept: () => void; // something of it stands for the squad now
}

export function EveningSlip({ squad, evening, catalogue, trial, kept }: EveningSlipProps) {
  const slip = useSlip(evening, catalogue, trial.tried, trial.plan?.outcome === "optimal");
  if (!slip) return <p class="waiting table-tall">{say("slip.waiting")}</p>;
  const { joins_in, with_swaps, sits_out, pairs, trios, alone } = countsOf(slip, evening.documents.roster.length);
  const told = [many("pairs", pairs), ...(trios > 0 ? [many("trios", trios)] : []), ...(alone > 0 ? [many("alone", alone)] : [])];
  return (
    <section class="evening-slip" aria-labelledby="evening-slip">
      <h3 id="evening-slip">{say("slip.title")}</h3>
      <p>{say("slip.counts", { joins_in, with_swaps, sits_out })}</p>
      <p>{say("slip.groups", { groups: list(told) })}</p>
      {withoutNames.value ? <p class="soft">{say("slip.hidden")}</p> : <Names squad={squad} slip={slip} nameOf={nameOfPlayers(evening)} trial={trial} kept={kept} />}
      <p class="soft">
        {slip.restrictions_as_known === "" ? say("slip.never_known") : say("slip.known", { when: slip.restrictions_as_known })} {say("evening.rules")}
      </p>
    </section>
  );
}
