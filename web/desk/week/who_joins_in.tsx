// Who of a squad joins in today: counts first, names one step deeper. Asking is a line in the book of reads, so it waits
// for the click.
import type { components } from "../../shared/api.ts";
import { weekday } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Dialog } from "../shell/dialog.tsx";
import { withoutNames } from "../shell/preferences.ts";
import { many, say } from "./words.ts";

type Tonight = components["schemas"]["SquadTonight"];
type Standing = Tonight["standing"][number];
type Word = NonNullable<Standing["word"]>;

const kWords: Word[] = ["joins in", "joins in with swaps", "sits out, see a clinician"];

export interface Joining {
  word: Word;
  players: { name: string; instructions: string[]; until: string | undefined }[];
}

// Whoever the server says nothing of joins in.
export function joiningOf({ roster, standing }: Pick<Tonight, "roster" | "standing">): Joining[] {
  const of = new Map(standing.map((each) => [each.player, each]));
  const groups = kWords.map((word): Joining => ({ word, players: [] }));
  for (const { player, name } of roster) {
    const own = of.get(player);
    const group = groups.find(({ word }) => word === (own?.word ?? "joins in"));
    group?.players.push({ name, instructions: own?.instructions ?? [], until: own?.until });
  }
  return groups;
}

function Group({ group: { word, players } }: { group: Joining }) {
  return (
    <section>
      <p>
        <strong>{say(`who.${word}`)}:</strong> {many("players", players.length)}
      </p>
      {players.length > 0 && !withoutNames.value && (
        <details>
          <summary>
            {say("who.names")}
            <span class="out-of-sight">: {say(`who.${word}`)}</span>
          </summary>
          <ul>
            {players.map(({ name, instructions, until }) => (
              <li key={name}>
                <bdi>{name}</bdi>
                {instructions.length > 0 && <span lang="en">: {instructions.join("; ")}</span>}
                {until && <span class="soft">, {say("who.until", { day: weekday(until) })}</span>}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

export function WhoJoinsIn({ squad, name, onClose }: { squad: string; name: string; onClose: () => void }) {
  const asked = useAsked("squad", { squad });
  return (
    <Dialog title={say("who.title", { squad: name })} onClose={onClose}>
      <Of asked={asked} height="table">
        {(tonight) => (
          <>
            {joiningOf(tonight).map((group) => (
              <Group key={group.word} group={group} />
            ))}
            <p>{tonight.known_at ? say("who.known", { when: tonight.known_at }) : say("who.never")}</p>
            {withoutNames.value && <p class="soft">{say("who.hidden")}</p>}
            <p class="soft">
              {say("who.noted")} {say("who.rules")}
            </p>
          </>
        )}
      </Of>
    </Dialog>
  );
}
