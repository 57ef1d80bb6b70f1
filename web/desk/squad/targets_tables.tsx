// Weeks against their targets: a bar drawn to the family's measure with the target as a line, and the same in words.
import { number } from "../../shared/words/words.ts";
import type { SquadBlock } from "./block.ts";
import { durationWords } from "./dose_words.ts";
import { familyName, familyOf } from "./drill_names.ts";
import { inQuarters, many, say } from "./words.ts";
import { familiesOf, loadsOf } from "./week_targets.ts";

const kWidth = 84;
const kHeight = 10;

// Full to the right edge is half as much again as the measure, beyond which nothing more counts.
function Bar({ value, mark }: { value: number; mark: number }) {
  const x = (at: number) => Math.min(1, at / Math.max(0.01, 1.5 * mark)) * (kWidth - 2) + 1;
  return (
    <svg width={kWidth} height={kHeight + 4} aria-hidden="true" class="target-bar">
      <line x1={1} x2={kWidth - 1} y1={kHeight + 2} y2={kHeight + 2} stroke="var(--chalk)" />
      <rect x={1} y={3} width={Math.max(0, x(value) - 1)} height={kHeight - 2} fill="var(--rule)" />
      <line x1={x(mark)} x2={x(mark)} y1={0} y2={kHeight + 4} stroke="var(--ink)" stroke-width={2} />
    </svg>
  );
}

function WeekHeadings({ block, first }: { block: SquadBlock; first: string }) {
  return (
    <thead>
      <tr>
        <th scope="col">{first}</th>
        {block.weeks.map(({ week }) => (
          <th key={week} scope="col">
            {say("grid.week", { week })}
          </th>
        ))}
      </tr>
    </thead>
  );
}

export function TargetsTables({ block }: { block: SquadBlock }) {
  const families = familiesOf(block, familyOf);
  const used = new Set(block.sessions.map(({ week }) => week));
  return (
    <section aria-labelledby="against-targets">
      <h2 id="against-targets">{say("targets.title")}</h2>
      <p class="soft">{say("targets.what")}</p>
      <div class="table targets-table" role="region" tabIndex={0} aria-label={say("targets.title")}>
        <table>
          <caption class="out-of-sight">{say("targets.title")}</caption>
          <WeekHeadings block={block} first={say("targets.family")} />
          <tbody>
            {families.map(({ family, weeks }) => (
              <tr key={family}>
                <th scope="row">{familyName(family)}</th>
                {block.weeks.map(({ week }) => {
                  const own = weeks.find((each) => each.week === week);
                  return (
                    <td key={week}>
                      {!used.has(week) && <span class="soft">{say("targets.no_session")}</span>}
                      {own && used.has(week) && (
                        <>
                          <Bar value={own.doses} mark={own.target} />
                          <span>{say("targets.cell", { doses: inQuarters(own.doses), target: inQuarters(own.target) })}</span>
                          <span class="soft">
                            {durationWords(own.seconds)}
                            {own.sets !== undefined && `, ${many("sets", own.sets)}`}
                          </span>
                        </>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <h3>{say("targets.loads")}</h3>
      <div class="table targets-table" role="region" tabIndex={0} aria-label={say("targets.loads")}>
        <table>
          <caption class="out-of-sight">{say("targets.loads")}</caption>
          <WeekHeadings block={block} first={say("targets.load")} />
          <tbody>
            {loadsOf(block).map(({ load, weeks }) => (
              <tr key={load}>
                <th scope="row">{say(`targets.${load}`)}</th>
                {block.weeks.map(({ week }) => {
                  const own = weeks.find((each) => each.week === week);
                  return (
                    <td key={week}>
                      {own && used.has(week) && (
                        <>
                          <Bar value={own.used} mark={own.ceiling} />
                          <span>{say("targets.of", { used: number(Math.round(own.used)), ceiling: number(own.ceiling) })}</span>
                        </>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
