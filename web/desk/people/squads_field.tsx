// Which squads: ticked in a list, since a club has up to a hundred and nobody types their ids.
import type { SquadRow } from "../../shared/api.ts";
import { say } from "./words.ts";

export function SquadsField({ squads, chosen, onChange }: { squads: SquadRow[]; chosen: string[]; onChange: (chosen: string[]) => void }) {
  const tick = (id: string, on: boolean) => onChange(on ? [...chosen, id] : chosen.filter((one) => one !== id));
  return (
    <fieldset class="squads">
      <legend>{say("charges.which")}</legend>
      {squads.map(({ id, name }) => (
        <label key={id} class="tick">
          <input type="checkbox" checked={chosen.includes(id)} onChange={(event) => tick(id, event.currentTarget.checked)} />
          <bdi>{name}</bdi>
        </label>
      ))}
    </fieldset>
  );
}
