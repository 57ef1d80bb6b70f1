// A drill by its name in the language that is shown.
import { hashOf } from "../shell/route.ts";
import { nameOfDrill } from "../squad/drill_names.ts";

export function DrillLink({ id }: { id: string }) {
  return <a href={hashOf("drills", id)}>{nameOfDrill(id)}</a>;
}
