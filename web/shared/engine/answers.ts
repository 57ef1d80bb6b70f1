// The door's answers as the phone reads them: docs/formats/door.md, schema/plan-answer.schema.json. Keys that no screen
// needs are left out; readers ignore what they do not know.

export type Formation = "lane" | "spread" | "pairs";
export type ChangeKind = "smaller-dose" | "larger-dose" | "easier-rung" | "harder-rung" | "left-out" | "new-drill";

export interface PlanItem {
  drill: string;
  name: string;
  family: string;
  phase: string;
  formation: Formation;
  rung: string;
  rung_words: string;
  sets: number;
  amount: number;
  dose: string;
  rest_seconds?: number;
  change_seconds: number;
  takes_seconds: number;
  starts_seconds: number;
}

// A code and its values, to be said in the language that is set (docs/formats/door.md, 'Codes of reasons').
export interface Reason {
  code: string;
  age?: number;
  because?: Reason;
  breaks_seconds?: number;
  cones?: number;
  count?: number;
  days_to_match?: number;
  drill?: string;
  drills?: string[];
  family?: string;
  load?: string;
  match_in_sight?: boolean;
  metres?: number;
  most?: number;
  most_new?: number;
  need?: string;
  needed_seconds?: number;
  rung?: string;
  seconds?: number;
  slot_seconds?: number;
  surface?: string;
  time?: Reason;
  why?: string;
}

export interface WayOut {
  slot_seconds?: number;
  lift: string[];
  any_one: boolean;
  another_day?: true;
}

export interface PlanChange {
  kind: ChangeKind;
  drill: string;
  from: string;
  to: string;
  why: string;
  reason?: Reason;
}

export interface PlanTime {
  median_seconds: number;
  nine_in_ten_seconds: number;
  finish: string;
  finish_nine_in_ten: string;
  saving: string;
}

// What a slot that is longer by so much would buy.
export interface EveningPrice {
  minutes: number;
  buys: string;
  gains?: { covers?: string; drill?: string; sets?: number; amount?: number }[];
}

export interface PlanAnswer {
  answer: "plan";
  outcome: "optimal" | "infeasible";
  slot_seconds: number;
  margin_seconds: number;
  planned_seconds: number;
  turnout: number;
  gathering_seconds: number;
  time?: PlanTime;
  items: PlanItem[];
  changes?: PlanChange[];
  minute_prices?: EveningPrice[];
  uncovered?: { family: string; cure: string; reason?: Reason }[];
  infeasible?: { conflict: string[]; demands?: Reason[]; way_out: string; ways_out?: WayOut[] };
  restrictions_as_known: string;
}

export interface SlipGroup {
  players: string[];
  non_contact: boolean;
}

export type TakesPart = "joins in" | "joins in with swaps" | "sits out, see a clinician";

export interface SlipSwap {
  player: string;
  takes_part: TakesPart;
  instruction: string;
  swaps: { instead_of: string; instruction: string; kind?: "same-drill" | "other-drill" | "nothing"; does?: { drill: string; rung: string; sets: number; amount: number } }[];
}

export interface SlipAnswer {
  answer: "slip";
  groups: SlipGroup[];
  alone: string[];
  regrouped: { drill: string; groups: SlipGroup[]; alone: string[] }[];
  notes: string[];
  swaps: SlipSwap[];
  restrictions_as_known: string;
}

// Lengths in thousandths of stature, x to the right and y down; strokes from the back to the front.
export interface FigureStroke {
  part: string;
  side?: "near" | "far" | "left" | "right"; // absent: the trunk
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  width: number;
}

export interface FigureBody {
  strokes: FigureStroke[];
  head: { x: number; y: number; r: number };
}

// Where a thing is at a moment; nothing where it is not in the picture. A band has two ends.
export interface PropPlace {
  x?: number;
  y?: number;
  x2?: number;
  y2?: number;
}

export interface FigureFrame extends FigureBody {
  partner?: FigureBody;
  props?: PropPlace[];
}

// points: x, y, x, y and so on from where the thing is; r: a disc about that in their place.
export interface PropShape {
  ink: "outline" | "light" | "solid" | "line" | "thin";
  points?: number[];
  r?: number;
}
export interface FigureProp {
  kind: string;
  before: boolean; // drawn after the figure
  shapes: PropShape[];
}

export interface FigureAnswer {
  answer: "figure";
  view: "side" | "front";
  cycle: "loop" | "once" | "hold";
  width: number;
  height: number;
  ground: number; // y of it
  main: number; // the frame nearest to the card's picture
  props?: FigureProp[];
  frames: FigureFrame[];
}

export interface Fault {
  code: string;
  file: string;
  field: string;
  found: string;
  expected: string;
  hint: string;
  sentence: string;
}

export interface FaultsAnswer {
  answer: "faults";
  faults: Fault[];
}

// What the catalogue's checker says of one drill; none: it is sound.
export interface CheckDrillAnswer {
  answer: "check-drill";
  faults: Fault[];
}

// What the engine itself says: a newer question of the same kind took this one's place, or the worker broke.
export interface DroppedAnswer {
  answer: "dropped";
}
export interface BrokenAnswer {
  answer: "broken";
  why: string;
}

export type Silence = FaultsAnswer | DroppedAnswer | BrokenAnswer;
