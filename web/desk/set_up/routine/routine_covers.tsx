// What a week of the routine gives of each family against its target: a bar with the target as a line, and in words.
import { familyName } from "../../squad/drill_names.ts";
import { inQuarters } from "../../squad/words.ts";
import type { FamilyWeek } from "./week_work.ts";
import { say } from "./words.ts";

const kWide = 84;
const kHigh = 14;

// To the right edge is half as much again as the target, beyond which nothing more counts.
function Bar({ doses, target }: FamilyWeek) {
  const at = (value: number) => 1 + (kWide - 2) * Math.min(1, value / (1.5 * target));
  return (
    <svg width={kWide} height={kHigh} aria-hidden="true">
      <line x1={1} x2={kWide - 1} y1={kHigh - 1} y2={kHigh - 1} stroke="var(--chalk)" />
      <rect x={1} y={3} width={Math.max(0, at(doses) - 1)} height={kHigh - 5} fill="var(--rule)" />
      <line x1={at(target)} x2={at(target)} y1={0} y2={kHigh} stroke="var(--ink)" stroke-width={2} />
    </svg>
  );
}

export function RoutineCovers({ week }: { week: FamilyWeek[] }) {
  return (
    <section aria-labelledby="routine-covers">
      <h3 id="routine-covers">{say("covers")}</h3>
      <p class="soft">{say("covers_what")}</p>
      <table class="covers">
        <caption class="out-of-sight">{say("covers")}</caption>
        <thead>
          <tr>
            <th scope="col">{say("family")}</th>
            <th scope="col">{say("week")}</th>
          </tr>
        </thead>
        <tbody>
          {week.map((one) => (
            <tr key={one.family}>
              <th scope="row">
                {familyName(one.family)}
                {one.required && one.drills === 0 ? <span class="fault">{say("uncovered")}</span> : null}
              </th>
              <td>
                <span class="row">
                  <Bar {...one} />
                  {say("of", { doses: inQuarters(one.doses), target: inQuarters(one.target) })}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
