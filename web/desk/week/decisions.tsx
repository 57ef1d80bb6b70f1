// What needs a decision: the squads to visit, each with its reasons and a way on, and the drills that help was asked with.
import { list, weekday } from "../../shared/words/words.ts";
import { hashOf } from "../shell/route.ts";
import { nameOfDrill } from "../squad/drill_names.ts";
import type { HelpAsked, Reason, Visit } from "./visits.ts";
import { many, say } from "./words.ts";

const kNamed = 3; // squads; more are told by their number

function reasonWords({ kind, count, of, days, drills }: Reason): string {
  const names = list(drills.map(nameOfDrill));
  if (count === 1) return say(`reason.${kind}.one`, { day: weekday(days[0] ?? ""), drills: names });
  return say(`reason.${kind}.other`, { count, of, drills: names });
}

function VisitRow({ visit }: { visit: Visit }) {
  return (
    <li>
      <h4>{visit.name}</h4>
      <ul>
        {visit.reasons.map((reason) => (
          <li key={reason.kind}>{reasonWords(reason)}</li>
        ))}
      </ul>
      <a href={hashOf("squad", visit.squad)} aria-label={`${say("decide.open_squad")}: ${visit.name}`}>
        {say("decide.open_squad")}
      </a>
    </li>
  );
}

function HelpRow({ help, nameOf }: { help: HelpAsked; nameOf: (squad: string) => string }) {
  const squads = [...new Set(help.asked.map(({ squad }) => squad))].map(nameOf);
  const drill = nameOfDrill(help.drill);
  return (
    <li>
      <h4>{drill}</h4>
      <p>{say("decide.asked_by", { squads: squads.length > kNamed ? many("squads", squads.length) : list(squads), day: weekday(help.asked[0]?.day ?? "") })}</p>
      <a href={hashOf("drills", help.drill)} aria-label={`${say("decide.open_drill")}: ${drill}`}>
        {say("decide.open_drill")}
      </a>
    </li>
  );
}

interface DecisionsProps {
  visits: Visit[];
  help: HelpAsked[];
  anything: boolean; // was anything entered at all
  until: string; // the last day that was looked at
  nameOf: (squad: string) => string;
}

export function Decisions({ visits, help, anything, until, nameOf }: DecisionsProps) {
  return (
    <section class="decisions" aria-labelledby="to-decide">
      <h2 id="to-decide">{say("decide.title")}</h2>
      <div class="two">
        <section aria-labelledby="to-visit">
          <h3 id="to-visit">{say("decide.visit")}</h3>
          {visits.length === 0 ? (
            <p>{say(anything ? "decide.visit_none" : "decide.visit_empty")}</p>
          ) : (
            <>
              <p class="soft">{say("decide.visit_why", { day: weekday(until) })}</p>
              <ol class="cards">
                {visits.map((visit) => (
                  <VisitRow key={visit.squad} visit={visit} />
                ))}
              </ol>
            </>
          )}
        </section>
        <section aria-labelledby="help-asked">
          <h3 id="help-asked">{say("decide.help")}</h3>
          {help.length === 0 ? (
            <p>{say("decide.help_none")}</p>
          ) : (
            <ul class="cards">
              {help.map((each) => (
                <HelpRow key={each.drill} help={each} nameOf={nameOf} />
              ))}
            </ul>
          )}
        </section>
      </div>
    </section>
  );
}
