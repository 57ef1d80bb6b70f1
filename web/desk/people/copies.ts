// Whether the copies of the books are as they should be: one a night, one of them opened a week (docs/guides/backups.md).
import type { Said } from "../api/answer.ts";

type Noted = Said<"house">["backup"];

const kDay = 86_400_000;
const kCopyDays = 2; // a single night may fail without anybody being called (own judgement)
const kTriedDays = 8; // a week, and a day for whoever does it (own judgement)

export interface Standing {
  copied_days: number | undefined; // whole days since; undefined: never
  tried_days: number | undefined;
  copy_due: boolean;
  trial_due: boolean;
}

const daysSince = (stamp: string | undefined, now: number): number | undefined => (stamp === undefined ? undefined : Math.max(0, Math.floor((now - Date.parse(stamp)) / kDay)));

export function standingOf({ last, checked }: Noted, now: number): Standing {
  const copied_days = daysSince(last, now);
  const tried_days = daysSince(checked, now);
  return { copied_days, tried_days, copy_due: copied_days === undefined || copied_days >= kCopyDays, trial_due: tried_days === undefined || tried_days >= kTriedDays };
}
