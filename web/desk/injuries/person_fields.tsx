// Whom it is about: a squad, and one of its players. The list of a squad is asked for by choosing it, and stands in the book
// of reads.
import { Of, useAsked } from "../api/asked.tsx";
import { Choice } from "../people/choice.tsx";
import { Field, named } from "../shell/parts.tsx";
import { say } from "./words.ts";

interface PersonProps {
  squad: string;
  player: string;
  change: (squad: string, player: string) => void;
  fault?: string;
}

function Player({ squad, player, change, fault }: PersonProps) {
  const asked = useAsked("squad", { squad });
  return (
    <Of asked={asked} height="field">
      {({ roster }) => (
        <Field label={say("form.player")} {...(fault ? { fault } : {})}>
          {(given) => (
            <select {...given} value={player} onChange={(event) => change(squad, event.currentTarget.value)}>
              <option value="">{say("form.choose")}</option>
              {roster.map((one) => (
                <option key={one.player} value={one.player}>
                  {`\u2068${named(one.name, one.player)}\u2069 (${one.player})`}
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
    </Of>
  );
}

export function PersonFields(props: PersonProps) {
  const squads = useAsked("squads", {});
  return (
    <Of asked={squads} height="field">
      {(said) => (
        <div class="row top">
          <Choice
            label={say("form.squad")}
            value={props.squad}
            options={[["", say("form.choose")], ...said.squads.map(({ id, name }): [string, string] => [id, name])]}
            onChange={(squad) => props.change(squad, "")}
          />
          {props.squad ? <Player key={props.squad} {...props} /> : null}
        </div>
      )}
    </Of>
  );
}
