// A drill as a file of the catalogue: the same keys in the same order and on the same lines as the files that ship.
// What is not known here is written too, after what is, so that nothing of a document is lost.
import type { DrillDocument } from "../drill_document.ts";

type Value = string | number | boolean | Value[] | Table;
interface Table {
  [key: string]: Value | undefined;
}

const kDrill = ["id", "name", "family", "phase", "formation", "ages", "purpose", "how", "telling_seconds", "space_metres", "needs", "not_on", "cues", "stop_if"];
const kRung = ["key", "change", "load", "stress", "needs", "ages_from"];
const kDose = ["kind", "sides", "tempo_seconds", "rest_seconds", "side_change_seconds", "steps"];
const kLane = ["shape", "out", "share_of_top_speed", "back", "stop_at_cones", "stop_seconds", "turn_seconds", "release_gap_seconds", "least_lane_metres"];
const kPair = ["both_at_once", "swap_seconds"];
const kLoads = ["contacts", "intensity", "eccentric", "hard_running"];
const kSources = ["dose", "timing", "loads", "stress", "technique"];
const kFigure = ["view", "facing", "main", "ghost", "cycle", "swap_sides", "arrow", "props"];
const kPose = ["label", "view", "at", "contacts", "settle", "shift", "lift", "angles", "hold", "tolerance_degrees", "tolerances", "eyes_closed", "props"];
const kPartner = ["facing", "forward", "size", "lift", "contacts", "settle", "angles", "hold"];

// Within braces.
const kInline = ["area", "kind", "grade", "sets", "amount", "at", "from", "direction", "to", "width", "length", "bend", "gap", "forward", "height", "hand_near", "hand_left", "hand_far", "hand_right"];
const kAngles = ["trunk", "trunk_flex", "spine", "neck", "turn", "hip", "hip_out", "hip_flex", "knee", "knee_flex", "ankle", "ankle_flex", "foot", "shoulder", "shoulder_out", "shoulder_flex", "elbow", "elbow_flex", "wrist"];
const kSides = ["", "_near", "_left", "_far", "_right"];
const kWithin = [...kInline, ...kAngles.flatMap((angle) => kSides.map((side) => angle + side))];

// Written with a decimal even where it is whole, as in the files that ship.
const kDecimal = new Set(["at", "width", "length", "stop_seconds", "turn_seconds", "release_gap_seconds"]);

function text(said: string): string {
  const escaped = said.replace(/[\\"\u0000-\u001f\u007f]/g, (one) => {
    if (one === "\\" || one === '"') return `\\${one}`;
    if (one === "\n") return "\\n";
    if (one === "\t") return "\\t";
    return `\\u${one.charCodeAt(0).toString(16).padStart(4, "0")}`;
  });
  return `"${escaped}"`;
}

const bare = (key: string): string => (/^[A-Za-z0-9_-]+$/.test(key) ? key : text(key));

function number(value: number, key: string): string {
  return Number.isInteger(value) && kDecimal.has(key) ? value.toFixed(1) : String(value);
}

function inline(value: Value, key: string): string {
  if (typeof value === "string") return text(value);
  if (typeof value === "number") return number(value, key);
  if (typeof value === "boolean") return String(value);
  if (Array.isArray(value)) return `[${value.map((one) => inline(one, key)).join(", ")}]`;
  const place = (name: string) => (kWithin.includes(name) ? kWithin.indexOf(name) : kWithin.length);
  const entries = Object.entries(value)
    .filter((entry): entry is [string, Value] => entry[1] !== undefined)
    .sort(([one], [other]) => place(one) - place(other));
  return entries.length === 0 ? "{}" : `{ ${entries.map(([name, one]) => `${bare(name)} = ${inline(one, name)}`).join(", ")} }`;
}

function lines(table: Table, order: string[], apart: string[] = []): string[] {
  const rest = Object.keys(table).filter((key) => !order.includes(key) && !apart.includes(key));
  return [...order, ...rest].flatMap((key) => {
    const value = table[key];
    return value === undefined ? [] : [`${bare(key)} = ${inline(value, key)}`];
  });
}

function figureLines(figure: Table, name: string): string[] {
  const out = [`[${name}]`, ...lines(figure, kFigure, ["pose"])];
  for (const pose of (figure.pose ?? []) as Table[]) {
    out.push(`[[${name}.pose]]`, ...lines(pose, kPose, ["partner"]));
    if (pose.partner) out.push(`[${name}.pose.partner]`, ...lines(pose.partner as Table, kPartner));
  }
  return out;
}

const kTables = ["rung", "dose", "lane", "pair", "watch", "stress", "loads", "sources", "figure", "rung_figure"];

export function tomlOf(document: DrillDocument): string {
  const drill = document as unknown as Table;
  const parts: string[][] = [lines(drill, kDrill, kTables)];
  const each = (key: string, order: string[]) => {
    const rows = (drill[key] ?? []) as Table[];
    if (rows.length > 0) parts.push(rows.flatMap((row) => [`[[${key}]]`, ...lines(row, order)]));
  };
  const one = (key: string, order: string[]) => {
    const table = drill[key];
    if (table !== undefined) parts.push([`[${key}]`, ...lines(table as Table, order)]);
  };
  each("rung", kRung);
  one("dose", kDose);
  one("lane", kLane);
  one("pair", kPair);
  each("watch", ["fault", "cue"]);
  each("stress", ["area", "kind", "grade"]);
  one("loads", kLoads);
  one("sources", kSources);
  if (drill.figure) parts.push(figureLines(drill.figure as Table, "figure"));
  const ladder = document.rung.map(({ key }) => key);
  const figures = Object.entries((drill.rung_figure ?? {}) as Table);
  for (const [rung, figure] of figures.sort(([one], [other]) => ladder.indexOf(one) - ladder.indexOf(other))) {
    if (figure !== undefined) parts.push(figureLines(figure as Table, `rung_figure.${bare(rung)}`));
  }
  return `${parts.map((part) => part.join("\n")).join("\n\n")}\n`;
}
