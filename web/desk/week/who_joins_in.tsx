// Who of a squad joins in today: counts first, names one step deeper. Asking is a line in the book of reads, so it waits
// for the click.
import { weekday } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Dialog } from "../shell/dialog.tsx";
import { withoutNames } from "../shell/preferences.ts";
import { joiningOf, type Joining } from "./joining.ts";
import { many, say } from "./words.ts";

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
