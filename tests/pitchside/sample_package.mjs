// A package of the demo squad as the server would give it, made with the program itself, so that the door gets real
// documents.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./places.mjs";

export function samplePackage(program) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-package-"));
  const saved = join(folder, "request.json");
  const squadFile = join(root, "demo/quillmere/squads/u13-kestrels.toml");
  try {
    execFileSync(program, ["plan", "--squad", squadFile, "--save-request", saved, "--json"]);
    const { catalogue, routine, strip, squad, restrictions, permissions, roster } = JSON.parse(readFileSync(saved, "utf8"));
    const documents = { routine, strip, squad, ...(permissions ? { permissions } : { restrictions }), roster };
    return {
      version: 1,
      club: "Quillmere Juniors",
      squad: { id: "u13-kestrels", name: "Under-13 Kestrels" },
      made: "2026-11-26T05:20:00+01:00",
      lease_until: "2099-01-01T00:00:00+01:00",
      known_at: "Sunday 20:10",
      ask: "Ask: who is sore tonight?",
      roster: roster
        .filter((player) => player.squads.includes("U13"))
        .map(({ id, name, shirt }) => ({ player: id, name, shirt })),
      standing: [
        { player: "Q14", word: "joins in with swaps", instructions: ["no jumping, no sharp turns"], until: "2026-12-03" },
        { player: "Q05", word: "sits out, see a clinician", instructions: ["sits out until the lead has spoken with the family"] },
      ],
      evenings: [
        { day: "2026-11-26", start: "18:00", minutes: 20, days_to_match: 2, strip: strip.name, documents },
        { day: "2026-12-01", start: "18:00", minutes: 20, days_to_match: 4, strip: strip.name, documents },
      ],
      catalogue,
      emergency: [
        { player: "Q01", guardian: "Folake Okonjo-Bellweather", phone: "+44 20 7946 0101", allergy: "bee stings, has a pen" },
        { player: "Q04", guardian: "Síle Ní Mhurchú", phone: "020 7946 0104", inhaler: "blue one, in the bag" },
      ],
      action_plans: [
        {
          strip: strip.name,
          venue: {
            name: "Millrace ground", address: "Millrace Lane 9, Quillmere", map: "pitch 2 behind the club house", emergency_number: "112",
            way_in: "gate B in Orchard Road, open from 16:30", defibrillator: "club house, outside wall by the door",
            roles: { stays_with_player: "the squad's coach", calls: "the second coach", meets_ambulance: "a parent at the gate" },
          },
        },
      ],
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
