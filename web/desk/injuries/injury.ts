// One injury, as the server counts it (docs/formats/records.md: neither the day it happened nor the day of return is lost).
import type { components } from "../../shared/api.ts";

export type Injury = components["schemas"]["Injuries"]["injuries"][number];

export const isOpen = ({ open = true }: Injury): boolean => open;

export const dayOfNow = (now: Date): string => {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};
