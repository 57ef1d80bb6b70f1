// What a phone holds of one squad, as GET /api/device/squads/{squad}/evenings gives it (docs/formats/pocket.md): enough
// to plan, run and record the coming evenings with no signal, and nothing that its owner may not see. Of a player it has
// a name and what to do, never a measure or a reason.

import type { DoorTable } from "../../shared/engine/door_value.ts";

export interface Listed {
  player: string; // id
  name: string;
  shirt?: string;
}

// What holds of a player, in the coach's words.
export interface Standing {
  player: string;
  word: "joins in" | "joins in with swaps" | "sits out, see a clinician";
  instructions: string[];
  until?: string; // 2026-12-03
}

// The documents of a request to the door without its catalogue, which all evenings share (docs/formats/door.md).
export interface EveningDocuments {
  routine: DoorTable;
  strip: DoorTable;
  squad: DoorTable;
  permissions: DoorTable;
  roster: DoorTable[];
}

export interface Evening {
  day: string; // 2026-12-01
  start: string; // 18:00
  minutes: number;
  days_to_match?: number; // 0: a match is played that day
  strip: string; // its name, to be shown
  documents: EveningDocuments;
}

// Whom to call and where to go at a place; what is not known is absent (docs/formats/venue.md).
export interface Venue {
  name: string;
  address?: string;
  map?: string;
  way_in?: string;
  emergency_number?: string;
  phone_with_signal?: string;
  defibrillator?: string;
  first_aid_bag?: string;
  roles?: { stays_with_player?: string; calls?: string; meets_ambulance?: string; minds_others?: string };
}
export interface ActionPlan {
  strip: string; // as Evening.strip
  venue: Venue;
}

// Whom to call at home, of a player whose family agreed to have it on a phone (docs/formats/emergency.md). Absent: not
// stated, which is not 'none'.
export interface EmergencySheet {
  player: string;
  guardian: string;
  phone: string;
  allergy?: string;
  inhaler?: string;
  other?: string;
}

export interface EveningPackage {
  version: 1;
  club: string;
  squad: { id: string; name: string };
  made: string; // 2026-11-27T05:20:00+01:00, by the server's clock
  lease_until: string; // the same form: names are shown until then without another contact
  known_at?: string; // 'Sunday 20:10'; absent where nothing was ever entered of anybody
  ask: string; // what to ask tonight
  roster: Listed[];
  standing: Standing[];
  evenings: Evening[]; // the earliest first; may be empty
  catalogue: DoorTable;
  action_plans: ActionPlan[];
  emergency?: EmergencySheet[];
}
