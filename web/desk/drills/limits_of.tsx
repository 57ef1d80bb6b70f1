// The youth ceilings that a drill counts against, and what of it passes one by itself.
import { number } from "../../shared/words/words.ts";
import type { DrillDocument, LimitsDocument } from "./drill_document.ts";
import { kLoadKinds, kUsualLaneMetres, touchedBy, type LoadKind, type Touched } from "./drill_limits.ts";
import { agesInWords, doseInWords } from "./spoken.ts";
import { apart, say } from "./words.ts";

const kPercents = { contacts: "contacts_percent", eccentric: "eccentric_percent", hard_running: "hard_running_percent" } as const;

function overInWords(drill: DrillDocument, { over }: Touched): string {
  if (over.length === 0) return say("limits.within");
  const rungs = drill.rung.filter(({ key }) => over.some(({ rung }) => rung === key));
  return rungs
    .map((rung) => {
      const least = over.find(({ rung: key }) => key === rung.key);
      return least ? say("limits.over", { rung: apart(rung.change), dose: doseInWords(drill, least.step) }) : "";
    })
    .join("; ");
}

function nearMatches(load: LoadKind, limits: LimitsDocument): string {
  return limits.match
    .filter((row) => row[kPercents[load]] < 100)
    .map((row) => ({ days: row.days, share: row[kPercents[load]] === 0 ? say("limits.none_of_it") : `${row[kPercents[load]]} %` }))
    .map(({ days, share }) => say(days === 0 ? "limits.match_day" : days === 1 ? "limits.day_before" : "limits.days_before", { days, share }))
    .join(" ");
}

export function LimitsOf({ drill, limits }: { drill: DrillDocument; limits: LimitsDocument }) {
  const touched = touchedBy(drill, limits);
  if (touched.length === 0) return <p>{say("limits.none")}</p>;
  return (
    <>
      {kLoadKinds.filter((kind) => touched.some(({ load }) => load === kind)).map((kind) => (
        <div key={kind} class="table limits" tabIndex={0} role="region" aria-label={say(`load.${kind}`)}>
          <table>
            <caption>{say(`load.${kind}`)}</caption>
            <thead>
              <tr>
                <th scope="col">{say("limits.ages")}</th>
                <th scope="col" class="number">{say("limits.ceiling")}</th>
                <th scope="col" class="number">{say("limits.most")}</th>
                <th scope="col">{say("limits.so")}</th>
              </tr>
            </thead>
            <tbody>
              {touched.filter(({ load }) => load === kind).map((row) => (
                <tr key={row.ages.from}>
                  <th scope="row">{agesInWords(row.ages)}</th>
                  <td class="number">{number(row.ceiling)}</td>
                  <td class="number">{number(row.most)}</td>
                  <td>{overInWords(drill, row)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p class="soft">{nearMatches(kind, limits)}</p>
        </div>
      ))}
      {drill.lane ? <p class="soft">{say("limits.lane", { metres: kUsualLaneMetres })}</p> : null}
    </>
  );
}
