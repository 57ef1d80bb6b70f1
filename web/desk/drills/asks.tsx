// What a rung asks of the body, by area: a restriction is matched against these.
import { kAreas, type DrillDocument, type Rung, type Stress } from "./drill_document.ts";
import { apart, say, wordFor } from "./words.ts";

// The drill's own grades with the rung's in their place; none of 0 (core/catalogue/drill.cpp).
export function stressesOn(drill: DrillDocument, rung: Rung): Stress[] {
  const same = (one: Stress, other: Stress) => one.area === other.area && one.kind === other.kind;
  const replaced = rung.stress ?? [];
  const kept = drill.stress.filter((one) => !replaced.some((other) => same(one, other)));
  return [...kept, ...replaced].filter(({ grade }) => grade > 0);
}

export function Asks({ drill, rung }: { drill: DrillDocument; rung: Rung }) {
  const stresses = stressesOn(drill, rung);
  const areas = kAreas.filter((area) => stresses.some((one) => one.area === area));
  return (
    <section class="sheet">
      <h2>{say("part.asks")}</h2>
      <p class="soft">{say("asks.about", { rung: apart(rung.change) })}</p>
      <table class="asks">
        <caption class="out-of-sight">{say("part.asks")}</caption>
        <thead>
          <tr>
            <th scope="col">{say("asks.area")}</th>
            <th scope="col">{say("asks.what")}</th>
          </tr>
        </thead>
        <tbody>
          {areas.map((area) => (
            <tr key={area}>
              <th scope="row">{wordFor("area", area)}</th>
              <td>{stresses.filter((one) => one.area === area).map(({ kind, grade }) => say("asks.graded", { what: wordFor("stress", kind), grade: wordFor("grade", String(grade)) })).join(", ")}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
