// A drill as the catalogue's file has it (docs/formats/drill.md), and the tables that stand beside it.
import type { FigureDocument } from "./figure_document.ts";

export const kFamilies = ["pulse-raising", "mobility", "hip-and-groin", "hamstring", "trunk", "balance", "leg-strength", "jump-and-land", "run-and-cut"] as const;
export const kPhases = ["start", "loosen", "build", "spring", "run"] as const;
export const kFormations = ["lane", "spread", "pairs"] as const;
export const kNeeds = ["partner", "wall", "ball-each", "ball-a-pair", "mat", "soft-ground", "line"] as const;
export const kSurfaces = ["wet", "hard", "uneven", "dark"] as const;
export const kAreas = ["head", "neck", "shoulder", "elbow", "wrist-and-hand", "chest", "low-back", "hip-and-groin", "front-thigh", "back-thigh", "knee", "lower-leg", "ankle", "foot"] as const;
export const kStressKinds = ["load", "stretch", "impact", "twist", "speed", "contact", "pressure"] as const;
export const kDoseKinds = ["reps", "seconds", "passes"] as const;
export const kShapes = ["out-and-back", "one-way", "facing"] as const;
export const kIntensities = ["low", "medium", "high"] as const;
export const kVouched = ["dose", "timing", "loads", "stress", "technique"] as const;

export interface Stress {
  area: string;
  kind: string;
  grade: number;
}
export interface Rung {
  key: string;
  change: string;
  load?: number;
  stress?: Stress[];
  needs?: string[];
  ages_from?: number;
}
export interface DoseStep {
  sets: number;
  amount: number;
}
export interface Dose {
  kind: string;
  sides?: boolean;
  tempo_seconds?: number;
  rest_seconds?: number;
  side_change_seconds?: number;
  steps: DoseStep[];
}
export interface Lane {
  shape: string;
  out: string;
  share_of_top_speed?: number;
  back?: string;
  stop_at_cones?: boolean;
  stop_seconds?: number;
  turn_seconds?: number;
  release_gap_seconds: number;
  least_lane_metres?: number;
}
export interface Pair {
  both_at_once?: boolean;
  swap_seconds?: number;
}
export interface Loads {
  contacts?: number;
  intensity?: string;
  eccentric?: number;
  hard_running?: boolean;
}
export interface Watch {
  fault: string;
  cue: string;
}
export type DrillSources = { [vouched in (typeof kVouched)[number]]?: string[] };

export interface DrillDocument {
  id: string;
  name: string;
  family: string;
  phase: string;
  formation: string;
  ages: { from: number; to: number };
  purpose: string;
  how: string;
  telling_seconds: number;
  space_metres?: { width: number; length: number };
  needs?: string[];
  not_on?: string[];
  cues: string[];
  stop_if: string[];
  rung: Rung[];
  dose: Dose;
  lane?: Lane;
  pair?: Pair;
  watch: Watch[];
  stress: Stress[];
  loads?: Loads;
  sources: DrillSources;
  figure?: FigureDocument;
  rung_figure?: { [rung: string]: FigureDocument };
}

export interface FamilyRow {
  key: string;
  name: string;
  rank: number;
  phases: string[];
  why: string;
}
export interface SourceRow {
  key: string;
  author?: string;
  year?: number;
  doi?: string;
  note: string;
  unverified?: boolean;
}
export interface CeilingRow {
  ages: { from: number; to: number };
  jump_cap_session: number;
  eccentric_session: number;
  hard_running_session_metres: number;
  sources: string[];
}
export interface MatchRow {
  days: number;
  contacts_percent: number;
  eccentric_percent: number;
  hard_running_percent: number;
  new_drills: boolean;
  sources: string[];
}
export interface LimitsDocument {
  most_new_drills: number;
  warm_up_share_percent: number;
  contact_weight: { [intensity: string]: number };
  sources: string[];
  ceilings: CeilingRow[];
  match: MatchRow[];
}
export interface GaitRow {
  key: string;
  name: string;
}
export interface RoutineDocument {
  id: string;
  name: string;
  ages: { from: number; to: number };
  drill: { id: string; rung: string; sets: number; amount: number }[];
}
export interface CatalogueDocument {
  drills: DrillDocument[];
  families: { family: FamilyRow[] };
  limits: LimitsDocument;
  gaits: { gait: GaitRow[] };
  sources: { source: SourceRow[] };
  routines?: RoutineDocument[]; // where the server tells them
}
