// The catalogue: every drill with its figure, in the order of a session if nothing else is asked for.
import { useEffect } from "preact/hooks";
import { FormationSign } from "../../shared/evening/formation_sign.tsx";
import type { Formation } from "../../shared/engine/answers.ts";
import { list } from "../../shared/words/words.ts";
import { announce } from "../shell/announce.ts";
import { Empty, Head } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { kPhases, type CatalogueDocument, type DrillDocument } from "./drill_document.ts";
import { FilterForm, narrowed, orderOf, wantedBy } from "./filter_form.tsx";
import { isWanted, sorted } from "./find_drills.ts";
import { SmallFigure } from "./pictures.tsx";
import { agesInWords, doseInWords, spoken } from "./spoken.ts";
import { many, say, wordFor } from "./words.ts";

const kSettleMilliseconds = 500; // of typing, before the count is read out

export function DrillList({ catalogue, further }: { catalogue: CatalogueDocument; further: Record<string, string> }) {
  const order = orderOf(further);
  const wanted = wantedBy(further);
  // Looked for in the words that are read, and in the catalogue's own.
  const shown = sorted(catalogue.drills.filter((drill) => isWanted(spoken(drill), wanted) || isWanted(drill, wanted)).map(spoken), order);
  const count = narrowed(further) ? say("count_of", { count: shown.length, all: catalogue.drills.length }) : many("drills", shown.length);
  useEffect(() => {
    if (!narrowed(further)) return undefined;
    const told = setTimeout(() => announce(count), kSettleMilliseconds);
    return () => clearTimeout(told);
  }, [count]);
  const parts = order === "session" ? kPhases.map((phase) => ({ phase, drills: shown.filter((drill) => drill.phase === phase) })).filter(({ drills }) => drills.length > 0) : [{ phase: undefined, drills: shown }];
  return (
    <div class="drills">
      <Head title={say("title")}>
        <p>
          {count}. {say("local_rules")}
        </p>
      </Head>
      <p class="row not-on-paper">
        <a class="as-button" href={hashOf("drills", undefined, { do: "add" })}>
          {say("add")}
        </a>
      </p>
      <FilterForm further={further} />
      {shown.length === 0 ? (
        <Empty title={say("nothing.title")}>
          <p>{say("nothing.what")}</p>
        </Empty>
      ) : null}
      {parts.map(({ phase, drills }) => (
        <section key={phase ?? ""}>
          <h2>{phase ? wordFor("phase_long", phase) : say("all_drills")}</h2>
          <ul class="drill-list">
            {drills.map((drill) => (
              <DrillRow key={drill.id} drill={drill} figure={catalogue.drills.find(({ id }) => id === drill.id)?.figure} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

function rangeOf(drill: DrillDocument): string {
  const [least] = drill.dose.steps;
  const most = drill.dose.steps[drill.dose.steps.length - 1];
  if (!least || !most) return "";
  const [from, to] = [doseInWords(drill, least), doseInWords(drill, most)];
  return from === to ? from : say("from_to", { from, to });
}

function DrillRow({ drill, figure }: { drill: DrillDocument; figure: DrillDocument["figure"] }) {
  const needs = (drill.needs ?? []).map((need) => wordFor("need", need));
  return (
    <li>
      <SmallFigure figure={figure} />
      <div>
        <h3>
          <a href={hashOf("drills", drill.id)}>{drill.name}</a>
        </h3>
        <p class="soft">
          <svg class="sign" width="26" height="16" aria-hidden="true">
            <FormationSign formation={drill.formation as Formation} box={{ x: 1, y: 1, width: 24, height: 14 }} />
          </svg>
          {wordFor("family", drill.family)}, {wordFor("formation", drill.formation)}
        </p>
        <p class="soft">
          {agesInWords(drill.ages)}; {rangeOf(drill)}
          {needs.length > 0 ? `; ${say("needs", { needs: list(needs) })}` : ""}
        </p>
      </div>
    </li>
  );
}
