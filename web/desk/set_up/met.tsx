// Another lead saved the same meanwhile: what is put together, and where both changed the same, how theirs is and a way to take it.
import { number } from "../../shared/words/words.ts";
import { change, contentOf, type Met } from "./club_draft.ts";
import { kRoster } from "./players_sheet.ts";
import { say } from "./words.ts";
import en from "./words/en.json";

type Field = keyof typeof en.met.field;
const isField = (key: string): key is Field => Object.hasOwn(en.met.field, key);
const fieldWords = (key: string): string => say(`met.field.${isField(key) ? key : "else"}`);

// Where a word or a number says it; a list of evenings says too much for a line.
function valueWords(key: string, value: unknown): string | undefined {
  if (typeof value === "number") return number(value);
  return typeof value === "string" && (key === "name" || key === "note") ? value : undefined;
}

function WholeDocument({ met: { path }, what }: { met: Met; what: string }) {
  const mine_is_there = contentOf(path) !== undefined;
  return <li>{say(path === kRoster ? "met.list" : mine_is_there ? "met.taken_out" : "met.you_take_out", { what })}</li>;
}

export function MetMeanwhile({ met, nameOf }: { met: Met[]; nameOf: (path: string) => string }) {
  return (
    <ul>
      {met.map((one) => {
        const what = nameOf(one.path);
        const { theirs } = one;
        if (!theirs) return <WholeDocument key={one.path} met={one} what={what} />;
        if (one.both.length === 0) return <li key={one.path}>{say("met.together", { what })}</li>;
        return one.both.map((key) => {
          const value = valueWords(key, theirs[key]);
          return (
            <li key={`${one.path} ${key}`}>
              <bdi>{value === undefined ? say("met.both", { what, field: fieldWords(key) }) : say("met.both_is", { what, field: fieldWords(key), value })}</bdi>{" "}
              <button type="button" aria-label={say("met.take_of", { what, field: fieldWords(key) })} onClick={() => change(one.path, { [key]: theirs[key] })}>
                {say("met.take")}
              </button>
            </li>
          );
        });
      })}
    </ul>
  );
}
