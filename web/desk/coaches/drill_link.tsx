// A drill by its name in the language that is shown; else by its id, which is its name in short.
import { drillWords } from "../../shared/words/renderings.ts";
import { hashOf } from "../shell/route.ts";

export function DrillLink({ id }: { id: string }) {
  return <a href={hashOf("drills", id)}>{drillWords(id)?.name ?? id.replaceAll("-", " ")}</a>;
}
