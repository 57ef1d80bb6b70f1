// What needs a decision: the squads to visit with their reasons (docs/model/visits.md), restrictions to look at again, and
// the drills that help was asked with; each with a way on.
import { list, weekday } from "../../shared/words/words.ts";
import { hashOf } from "../shell/route.ts";
import { nameOfDrill } from "../squad/drill_names.ts";
import { HeldBack } from "./held_back.tsx";
import type { HelpAsked } from "./help_asked.ts";
import type { OfSquads, Tonight } from "./week_table.ts";
import { many, say } from "./words.ts";

type Visit = OfSquads["visits"][number];

const kNamed = 3; // squads; more are told by their number

function causeWords({ reason, count = 1, latest }: Visit["causes"][number]): string {
  const words = reason === "not-seen" ? say("cause.not-seen") : many(reason, count);
  return latest && reason !== "not-seen" ? say("decide.latest", { cause: words, day: weekday(latest) }) : words;
}

function VisitRow({ visit, name, enter }: { visit: Visit; name: string; enter: () => void }) {
  return (
    <li>
      <h4>{name}</h4>
      <ul>
        {visit.causes.map((cause) => (
          <li key={cause.reason}>{causeWords(cause)}</li>
        ))}
      </ul>
      <p class="row not-on-paper">
        <a href={hashOf("squad", visit.squad)} aria-label={`${say("decide.open_squad")}: ${name}`}>
          {say("decide.open_squad")}
        </a>
        <button type="button" class="quiet not-on-paper" aria-label={`${say("decide.visit_form")}: ${name}`} onClick={enter}>
          {say("decide.visit_form")}
        </button>
      </p>
    </li>
  );
}

// The click is what asks for names, and what stands in the book of reads.
function ReviewRow({ name, tonight, look }: { name: string; tonight: Tonight; look: () => void }) {
  return (
    <li class="review">
      <h4>{name}</h4>
      <p>
        {many("reviews", tonight.reviews)}
        {tonight.earliest_review && ` ${say("decide.earliest", { day: weekday(tonight.earliest_review) })}`}
      </p>
      <button type="button" class="quiet" aria-label={say("who.about", { squad: name })} onClick={look}>
        {say("decide.look")}
      </button>
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
      <a class="not-on-paper" href={hashOf("drills", help.drill)} aria-label={`${say("decide.open_drill")}: ${drill}`}>
        {say("decide.open_drill")}
      </a>
    </li>
  );
}

interface DecisionsProps {
  of: OfSquads;
  help: HelpAsked[];
  nameOf: (squad: string) => string;
  look: (squad: string) => void;
  enterVisit: (squad: string) => void;
  visited: string[]; // squads, in the weeks that are shown
}

export function Decisions({ of: { squads, visits }, help, nameOf, look, enterVisit, visited }: DecisionsProps) {
  const reviews = squads.filter(({ tonight }) => tonight.reviews > 0);
  return (
    <section class="decisions" aria-labelledby="to-decide">
      <h2 id="to-decide">{say("decide.title")}</h2>
      <div class="two">
        <section aria-labelledby="to-visit">
          <h3 id="to-visit">{say("decide.visit")}</h3>
          {visits.length === 0 ? (
            <p>{say("decide.visit_none")}</p>
          ) : (
            <>
              <p class="soft">{say("decide.visit_why")}</p>
              <ol class="cards">
                {visits.map((visit) => (
                  <VisitRow key={visit.squad} visit={visit} name={nameOf(visit.squad)} enter={() => enterVisit(visit.squad)} />
                ))}
              </ol>
            </>
          )}
          {visited.length > 0 ? <p class="visited">{say("decide.visited", { squads: list(visited.map(nameOf)) })}</p> : null}
        </section>
        <div>
          <HeldBack squads={squads} look={look} />
          <section aria-labelledby="to-review">
            <h3 id="to-review">{say("decide.review")}</h3>
            {reviews.length === 0 ? (
              <p>{say("decide.review_none")}</p>
            ) : (
              <ul class="cards">
                {reviews.map(({ squad, name, tonight }) => (
                  <ReviewRow key={squad} name={name} tonight={tonight} look={() => look(squad)} />
                ))}
              </ul>
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
      </div>
    </section>
  );
}
