// What a drill begins as, and what else changes where its formation, dose or rungs do, so that a form never holds what the
// format has no place for.
import type { CatalogueDocument, DrillDocument } from "../drill_document.ts";

// Letters, digits and hyphens: what a file and an address may be called.
export function idFor(name: string): string {
  return name.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40).replace(/-+$/, "");
}

export function freshKey(wanted: string, taken: string[]): string {
  const base = idFor(wanted) || "new";
  if (!taken.includes(base)) return base;
  for (let number = 2; ; number++) if (!taken.includes(`${base}-${number}`)) return `${base}-${number}`;
}

export function blankDrill(): DrillDocument {
  return {
    id: "", name: "", family: "trunk", phase: "build", formation: "spread", ages: { from: 8, to: 19 }, purpose: "", how: "", telling_seconds: 25,
    space_metres: { width: 1.5, length: 2 }, needs: [], not_on: [], cues: [], stop_if: [],
    rung: [{ key: "", change: "" }, { key: "", change: "" }],
    dose: { kind: "seconds", steps: [{ sets: 1, amount: 15 }, { sets: 1, amount: 20 }] },
    watch: [{ fault: "", cue: "" }],
    stress: [{ area: "low-back", kind: "load", grade: 1 }],
    sources: { dose: ["own-judgement"], timing: ["own-judgement"], stress: ["own-judgement"], technique: ["own-judgement"] },
    figure: { view: "side", cycle: "loop", pose: [
      { label: "start", at: 0, contacts: ["feet"], angles: { shoulder: 10, elbow: 10 } },
      { label: "middle", at: 0.5, contacts: ["feet"], angles: { trunk: 20, hip: 60, knee: 60, shoulder: 40, elbow: 10 } },
    ] },
  };
}

// Another like it, under a name that is free.
export function drillLike(drill: DrillDocument, catalogue: CatalogueDocument): DrillDocument {
  return { ...structuredClone(drill), id: freshKey(`${drill.id} own`, catalogue.drills.map(({ id }) => id)) };
}

export function withFormation(drill: DrillDocument, formation: string): DrillDocument {
  const { lane, pair, space_metres, ...rest } = drill;
  const lane_now = formation === "lane";
  const { tempo_seconds, ...dose } = drill.dose;
  const kind = lane_now ? "passes" : dose.kind === "passes" ? "reps" : dose.kind;
  const needs = drill.needs ?? [];
  const { hard_running, ...loads } = drill.loads ?? {};
  return {
    ...rest,
    formation,
    ...(formation === "pairs" && !needs.includes("partner") ? { needs: ["partner", ...needs] } : {}),
    ...(formation !== "pairs" && drill.formation === "pairs" ? { needs: needs.filter((need) => need !== "partner") } : {}),
    dose: { ...dose, kind, ...(kind === "reps" ? { tempo_seconds: tempo_seconds || 3 } : {}) },
    ...(drill.loads ? { loads: { ...loads, ...(lane_now && hard_running ? { hard_running } : {}) } } : {}),
    ...(lane_now ? { lane: lane ?? { shape: "out-and-back", out: "jog", back: "walk", turn_seconds: 1, release_gap_seconds: 2, least_lane_metres: 8 } } : {}),
    ...(formation === "pairs" ? { pair: pair ?? { both_at_once: false, swap_seconds: 6 } } : {}),
    ...(lane_now ? {} : { space_metres: space_metres ?? { width: 2, length: 2 } }),
  };
}

export function withDoseKind(drill: DrillDocument, kind: string): DrillDocument {
  const { tempo_seconds, ...dose } = drill.dose;
  return { ...drill, dose: { ...dose, kind, ...(kind === "reps" ? { tempo_seconds: tempo_seconds || 3 } : {}) } };
}

// A rung's key follows its words as long as nobody wrote another; its figure goes with it.
export function withRungChange(drill: DrillDocument, index: number, change: string): DrillDocument {
  const rung = drill.rung[index];
  if (!rung) return drill;
  const others = drill.rung.filter((_, at) => at !== index).map(({ key }) => key);
  const follows = rung.key === "" || rung.key === freshKey(rung.change, others);
  const key = follows ? (change.trim() === "" ? "" : freshKey(change, others)) : rung.key;
  const named = { ...drill, rung: drill.rung.map((one, at) => (at === index ? { ...one, key, change } : one)) };
  const figure = drill.rung_figure?.[rung.key];
  if (!figure || key === rung.key || key === "") return figure && key === "" ? { ...named, rung: drill.rung.map((one, at) => (at === index ? { ...one, change } : one)) } : named;
  const { [rung.key]: _, ...figures } = drill.rung_figure ?? {};
  return { ...named, rung_figure: { ...figures, [key]: figure } };
}

export function withoutRung(drill: DrillDocument, index: number): DrillDocument {
  const rung = drill.rung[index];
  if (!rung) return drill;
  const { [rung.key]: _, ...figures } = drill.rung_figure ?? {};
  const { rung_figure, ...rest } = drill;
  const kept = Object.keys(figures).length > 0 ? { rung_figure: figures } : {};
  return { ...rest, rung: drill.rung.filter((_, at) => at !== index), ...(rung_figure ? kept : {}) };
}

export function withSources(drill: DrillDocument): DrillDocument {
  if (!drill.loads || (drill.sources.loads ?? []).length > 0) return drill;
  return { ...drill, sources: { ...drill.sources, loads: ["own-judgement"] } };
}
