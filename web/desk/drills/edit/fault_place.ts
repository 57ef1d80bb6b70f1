// Where on the screen a fault's field is: which figure, pose and person must be shown for it, and then its element.
import { idOfPath } from "./paths.ts";
import type { Target } from "./figure_target.ts";

// Of a fault in a figure; undefined for the rest of the form, which is always there.
export function targetOfFault(field: string): Target | undefined {
  const found = /^(?:figure|rung_figure\.([^.]+))(?:\.pose\.(\d+)(\.partner)?)?(?:\.|$)/.exec(field);
  return found ? { rung: found[1], pose: Number(found[2] ?? 1) - 1, partner: found[3] !== undefined } : undefined;
}

// The field itself, or the nearest part of the form that it is in. An angle written for both sides has a slider a side.
export function elementOfFault(field: string): HTMLElement | null {
  const parts = field.split(".");
  for (let length = parts.length; length > 0; length--) {
    const path = parts.slice(0, length).join(".");
    const named = CSS.escape(path);
    const element = document.getElementById(idOfPath(path)) ?? document.querySelector<HTMLElement>(`[data-field="${named}"] input, [data-field^="${named}_"] input`);
    if (element) return element;
  }
  return targetOfFault(field) ? document.querySelector<HTMLElement>(".poses h2") : null;
}

export function focusOnFault(field: string): void {
  const element = elementOfFault(field);
  if (!element) return;
  for (let around = element.closest("details"); around; around = around.parentElement?.closest("details") ?? null) around.open = true;
  if (element.tabIndex < 0 && !element.hasAttribute("tabindex")) element.tabIndex = -1; // a heading
  element.focus();
  element.scrollIntoView({ block: "center" });
}
