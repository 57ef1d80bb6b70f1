// Where it hurts: on the map, or typed. What is typed is taken where it can only mean one region.
import { useState } from "preact/hooks";
import { Choice } from "../people/choice.tsx";
import { Field } from "../shell/parts.tsx";
import { BodyMap, type Chosen } from "./body_map.tsx";
import { keysOf, termTyped, termWords } from "./terms.ts";
import { say } from "./words.ts";

interface WhereProps {
  chosen: Chosen | undefined;
  choose: (chosen: Chosen | undefined) => void;
  fault?: string;
}

export function WhereField({ chosen, choose, fault }: WhereProps) {
  const [typed, setTyped] = useState(chosen ? termWords("region", chosen.region) : "");
  const takeTyped = (text: string) => {
    setTyped(text);
    const region = termTyped("region", text);
    if (!region) return choose(undefined);
    choose({ region, side: chosen?.region === region ? chosen.side : "" });
  };
  const takeSpot = (spot: Chosen) => {
    setTyped(termWords("region", spot.region));
    choose(spot);
  };
  return (
    <fieldset class="where">
      <legend>{say("form.where")}</legend>
      <p class="soft">{say("form.map_how")}</p>
      <BodyMap chosen={chosen} choose={takeSpot} />
      <div>
        <Field label={say("form.region")} hint={say("form.region_hint")} {...(fault ? { fault } : {})}>
          {(given) => (
            <>
              <input {...given} list="regions" value={typed} onInput={(event) => takeTyped(event.currentTarget.value)} autocomplete="off" spellcheck={false} />
              <datalist id="regions">
                {keysOf("region").map((key) => (
                  <option key={key} value={termWords("region", key)} />
                ))}
              </datalist>
            </>
          )}
        </Field>
        <p role="status" class="taken-as">
          {chosen ? say("form.taken_as", { where: chosen.side && chosen.side !== "middle" ? say("sided", { where: termWords("region", chosen.region), side: termWords("side", chosen.side) }) : termWords("region", chosen.region) }) : ""}
        </p>
        <Choice
          label={say("form.side")}
          value={chosen?.side ?? ""}
          options={[["", say("not_known")], ...keysOf("side").map((key): [string, string] => [key, termWords("side", key)])]}
          onChange={(side) => chosen && choose({ ...chosen, side })}
        />
      </div>
    </fieldset>
  );
}
