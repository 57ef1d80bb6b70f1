// One drill opened: its figure in motion, its ladder, what is said and watched for, and where every number comes from.
import { useState } from "preact/hooks";
import { wantsLessMotion } from "../../shared/figure/moving.tsx";
import { list } from "../../shared/words/words.ts";
import { shippedName } from "../set_up/routine/words.ts";
import { Head } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import type { CatalogueDocument, DrillDocument } from "./drill_document.ts";
import { Asks } from "./asks.tsx";
import { figureOf } from "./figures.ts";
import { Ladder } from "./ladder.tsx";
import { LimitsOf } from "./limits_of.tsx";
import { LargeFigure, secondsOf } from "./pictures.tsx";
import { SourcesOf } from "./sources_of.tsx";
import { agesInWords, doseInWords, spoken } from "./spoken.ts";
import { say, wordFor } from "./words.ts";

interface OneDrillProps {
  catalogue: CatalogueDocument;
  drill: DrillDocument;
  further: Record<string, string>;
}

export function OneDrill({ catalogue, drill, further }: OneDrillProps) {
  const [still, setStill] = useState(wantsLessMotion());
  const words = spoken(drill);
  const rung = words.rung.find(({ key }) => key === further.rung) ?? words.rung[0];
  const show = (key: string) => go(hashOf("drills", drill.id, { rung: key }), { replace: true });
  if (!rung) return null;
  return (
    <article class="one-drill">
      <Head title={words.name}>
        <p lang="en">{words.purpose}</p>
      </Head>
      <p class="row not-on-paper">
        <a href={hashOf("drills")}>{say("back")}</a>
        <a class="as-button" href={hashOf("drills", drill.id, { do: "edit" })}>
          {say("edit.begin")}
        </a>
        <button type="button" onClick={() => print()}>
          {say("print")}
        </button>
      </p>
      <div class="drill-body">
        <section class="drill-picture" aria-label={say("figure.about")}>
          <LargeFigure figure={figureOf(drill, rung.key)} name={`${words.name}: ${rung.change}`} seconds={secondsOf(drill)} still={still} />
          <p class="row">
            <span class="soft">{rung.change}</span>
            <button type="button" onClick={() => setStill(!still)}>
              {say(still ? "figure.move" : "figure.hold")}
            </button>
          </p>
          <Ladder drill={drill} words={words} shown={rung.key} show={show} />
        </section>
        <div>
          <section class="sheet">
            <h2>{say("part.how")}</h2>
            <p>{words.how}</p>
            <h3>{say("part.cues")}</h3>
            <ul>
              {words.cues.map((cue) => (
                <li key={cue}>{cue}</li>
              ))}
            </ul>
            <Watch drill={words} />
            <h3>{say("part.stop_if")}</h3>
            <ul>
              {words.stop_if.map((one) => (
                <li key={one}>{one}</li>
              ))}
            </ul>
          </section>
          <Place drill={drill} rungNeeds={rung.needs ?? []} />
          <section class="sheet">
            <h2>{say("part.doses")}</h2>
            <ul class="doses">
              {drill.dose.steps.map((step) => (
                <li key={`${step.sets} ${step.amount}`}>{doseInWords(drill, step)}</li>
              ))}
            </ul>
            <p class="soft">{restsInWords(drill)}</p>
            <LimitsOf drill={words} limits={catalogue.limits} />
          </section>
          <Asks drill={drill} rung={rung} />
          <UsedBy catalogue={catalogue} drill={words} />
          <SourcesOf drill={drill} catalogue={catalogue} />
        </div>
      </div>
    </article>
  );
}

function Watch({ drill }: { drill: DrillDocument }) {
  return (
    <table class="watch">
      <caption>{say("part.watch")}</caption>
      <thead>
        <tr>
          <th scope="col">{say("watch.seen")}</th>
          <th scope="col">{say("watch.said")}</th>
        </tr>
      </thead>
      <tbody>
        {drill.watch.map(({ fault, cue }) => (
          <tr key={fault}>
            <td>{fault}</td>
            <td>{cue}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function restsInWords({ dose, telling_seconds }: DrillDocument): string {
  const { rest_seconds = 0, side_change_seconds = 0, tempo_seconds = 0 } = dose;
  return [
    tempo_seconds > 0 ? say("dose.tempo", { seconds: tempo_seconds }) : "",
    rest_seconds > 0 ? say("dose.rest", { seconds: rest_seconds }) : "",
    side_change_seconds > 0 ? say("dose.side_change", { seconds: side_change_seconds }) : "",
    say("dose.telling", { seconds: telling_seconds }),
  ].filter((one) => one !== "").join(" ");
}

function Place({ drill, rungNeeds }: { drill: DrillDocument; rungNeeds: string[] }) {
  const needs = [...(drill.needs ?? []), ...rungNeeds].map((need) => wordFor("need", need));
  const not_on = (drill.not_on ?? []).map((ground) => wordFor("surface", ground));
  const { space_metres, lane } = drill;
  return (
    <section class="sheet">
      <h2>{say("part.place")}</h2>
      <p>
        {say("place.when", { phase: wordFor("phase_long", drill.phase), family: wordFor("family", drill.family), formation: wordFor("formation_long", drill.formation), ages: agesInWords(drill.ages) })}
      </p>
      <p>{needs.length > 0 ? say("place.needs", { needs: list(needs) }) : say("place.needs_nothing")}</p>
      {not_on.length > 0 ? <p>{say("place.not_on", { grounds: list(not_on) })}</p> : null}
      {space_metres ? <p>{say(drill.formation === "pairs" ? "place.space_pair" : "place.space", space_metres)}</p> : null}
      {lane ? (
        <p>
          {say("place.lane", { shape: wordFor("shape", lane.shape), out: wordFor("gait", lane.out), least: lane.least_lane_metres ?? 5, gap: lane.release_gap_seconds })}
          {lane.share_of_top_speed ? ` ${say("place.share", { percent: lane.share_of_top_speed })}` : ""}
        </p>
      ) : null}
    </section>
  );
}

function UsedBy({ catalogue, drill }: { catalogue: CatalogueDocument; drill: DrillDocument }) {
  const routines = (catalogue.routines ?? []).flatMap((routine) => {
    const row = routine.drill.find(({ id }) => id === drill.id);
    const rung = drill.rung.find(({ key }) => key === row?.rung);
    return row && rung ? [{ routine, row, rung }] : [];
  });
  if (!catalogue.routines) return null;
  return (
    <section class="sheet">
      <h2>{say("part.routines")}</h2>
      {routines.length === 0 ? <p>{say("routines.none")}</p> : null}
      <ul>
        {routines.map(({ routine, row, rung }) => (
          <li key={routine.id}>
            {say("routines.uses", { routine: shippedName(routine.id) ?? routine.name, ages: agesInWords(routine.ages), rung: rung.change, dose: doseInWords(drill, row) })}
          </li>
        ))}
      </ul>
    </section>
  );
}
