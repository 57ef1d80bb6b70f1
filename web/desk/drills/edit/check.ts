// The same checker as the command line's: the door reads the catalogue with this drill in it, and says what it found.
import type { FaultsAnswer } from "../../../shared/engine/answers.ts";
import type { CatalogueDocument, DrillDocument } from "../drill_document.ts";

export type Fault = FaultsAnswer["faults"][number] & { found: string; expected: string };

// A question that needs the catalogue first; what else it lacks is of no interest here.
export function checkRequest(drill: DrillDocument, instead_of: string | undefined, catalogue: CatalogueDocument) {
  const { drills, families, limits, gaits, sources } = catalogue;
  const others = drills.filter(({ id }) => id !== instead_of);
  return { request: "plan" as const, catalogue: { drills: [drill, ...others], families, limits, gaits, sources } };
}

// Of the drill alone: parts of the question that are not there are files without an ending.
export function faultsOfDrill(answer: { answer: string }): Fault[] | undefined {
  if (answer.answer !== "faults") return undefined; // dropped for a newer question, or the engine broke
  return ((answer as FaultsAnswer).faults as Fault[]).filter(({ file }) => file.endsWith(".toml") || file.startsWith("catalogue"));
}
