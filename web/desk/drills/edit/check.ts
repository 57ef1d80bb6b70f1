// The same checker as the command line's: the door puts the drill into the catalogue that it holds, and says what it found.
import type { CheckDrillAnswer, Fault, Silence } from "../../../shared/engine/answers.ts";
import type { DoorRequest } from "../../../shared/engine/engine.ts";
import type { CatalogueDocument, DrillDocument } from "../drill_document.ts";

// What the door reads of a catalogue; made once a draft, so that it is sent once.
export function readCatalogue({ drills, families, limits, gaits, sources }: CatalogueDocument) {
  return { drills, families, limits, gaits, sources };
}

export function checkRequest(drill: DrillDocument, instead_of: string | undefined, catalogue: ReturnType<typeof readCatalogue>) {
  return { request: "check-drill", drill, ...(instead_of === undefined ? {} : { instead_of }), catalogue } as unknown as DoorRequest & { request: "check-drill" };
}

// Of the drill; where the club's catalogue itself cannot be taken, of that.
export function faultsOfDrill(answer: CheckDrillAnswer | Silence): Fault[] | undefined {
  return "faults" in answer ? answer.faults : undefined; // dropped for a newer question, or the engine broke
}
