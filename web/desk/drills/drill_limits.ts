// Which youth ceilings a drill touches: the steps of its dose on each rung, held against the limits of each age, as
// core/catalogue/loads.cpp counts them, on the lane of 15 m that routines are checked on.
import type { CeilingRow, DoseStep, DrillDocument, LimitsDocument, Rung } from "./drill_document.ts";

export const kUsualLaneMetres = 15;
export const kLoadKinds = ["contacts", "eccentric", "hard_running"] as const;
export type LoadKind = (typeof kLoadKinds)[number];
export type Loads = Record<LoadKind, number>;

export function loadOf(drill: DrillDocument, rung: Rung, step: DoseStep, limits: LimitsDocument): Loads {
  const { contacts = 0, intensity = "low", eccentric = 0, hard_running = false } = drill.loads ?? {};
  const amount = step.sets * step.amount * (drill.dose.sides ? 2 : 1);
  const units = amount * (drill.dose.kind === "passes" ? kUsualLaneMetres : 1);
  const factor = rung.load ?? 1;
  const weight = limits.contact_weight[intensity] ?? 1;
  // Rounded up to the next thousandth, after each step as the core does; what is a hair over only by reckoning is not.
  const up = (value: number) => Math.max(0, Math.ceil(value * 1000 - 1e-6)) / 1000;
  return { contacts: up(up(units * contacts) * weight * factor), eccentric: up(units * eccentric * factor), hard_running: hard_running ? units : 0 };
}

export function ceilingsOf(row: CeilingRow, limits: LimitsDocument): Loads {
  return {
    contacts: Math.floor((row.jump_cap_session * limits.warm_up_share_percent) / 100),
    eccentric: row.eccentric_session,
    hard_running: row.hard_running_session_metres,
  };
}

export interface Touched {
  load: LoadKind;
  ages: { from: number; to: number };
  ceiling: number;
  most: number; // of any step and rung that these ages may do
  over: { rung: string; step: DoseStep }[]; // what passes the ceiling by itself, for the youngest of them
}

// The bands whose players may do the drill, for each load that it has; nothing for a drill that counts against no ceiling.
export function touchedBy(drill: DrillDocument, limits: LimitsDocument): Touched[] {
  return kLoadKinds.flatMap((load) =>
    limits.ceilings.flatMap((row): Touched[] => {
      const ages = { from: Math.max(row.ages.from, drill.ages.from), to: Math.min(row.ages.to, drill.ages.to) };
      if (ages.from > ages.to) return [];
      const ceiling = ceilingsOf(row, limits)[load];
      const asked = drill.rung
        .filter((rung) => (rung.ages_from ?? 0) <= ages.to)
        .flatMap((rung) => drill.dose.steps.map((step) => ({ rung: rung.key, step, amount: loadOf(drill, rung, step, limits)[load] })));
      const most = Math.max(0, ...asked.map(({ amount }) => amount));
      if (most === 0) return [];
      return [{ load, ages, ceiling, most, over: asked.filter(({ amount }) => amount > ceiling).map(({ rung, step }) => ({ rung, step })) }];
    }),
  );
}
