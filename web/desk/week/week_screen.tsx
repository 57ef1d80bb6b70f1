// Week: what needs a decision first, then squads by days. The address says which week; without one it is this week's.
import { useEffect, useState } from "preact/hooks";
import { number } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Head } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { useDrillNames } from "../squad/drill_names.ts";
import { dayAfter, mondayOf, momentOf } from "./days.ts";
import { Decisions } from "./decisions.tsx";
import { helpAsked } from "./help_asked.ts";
import { eveningsOf, plannedIn, sumsOf, weekTable, type Entered, type OfSquads } from "./week_table.ts";
import { PlanAllButton, usePlanAll } from "./plan_all.tsx";
import { seenEvenings } from "./visit.ts";
import { VisitForm } from "./visit_form.tsx";
import { WeekRows } from "./week_rows.tsx";
import { WhoJoinsIn } from "./who_joins_in.tsx";
import { many, rangeOf, say } from "./words.ts";

function Weeks({ monday, this_monday }: { monday: string; this_monday: string }) {
  return (
    <nav class="row weeks" aria-label={say("weeks")}>
      <a href={hashOf("week", dayAfter(monday, -7))}>{say("before")}</a>
      <a href={hashOf("week", this_monday)} aria-current={monday === this_monday ? "page" : undefined}>
        {say("this_week")}
      </a>
      <a href={hashOf("week", dayAfter(monday, 7))}>{say("after")}</a>
      <button type="button" onClick={() => print()}>
        {say("print")}
      </button>
    </nav>
  );
}

interface WeekProps {
  monday: string;
  of: OfSquads;
  entered: Entered[]; // of this week and the one before
  now: string;
  again: () => Promise<unknown>;
}

function Week({ monday, of, entered, now, again }: WeekProps) {
  const [looked, setLooked] = useState<string | undefined>();
  const [visits, setVisits] = useState<string | undefined>(); // the squad whose form is open
  const squads = of.squads.map(({ squad, name }) => ({ id: squad, name }));
  const evenings = eveningsOf(entered, plannedIn(of), now);
  const rows = weekTable(squads, evenings, monday);
  const sums = sumsOf(rows);
  const nameOf = (squad: string) => squads.find(({ id }) => id === squad)?.name ?? squad;
  const planner = usePlanAll(nameOf, () => void again());
  const without_plan = of.squads.filter(({ has_plan }) => !has_plan).length;
  return (
    <>
      <Decisions of={of} help={helpAsked(evenings)} nameOf={nameOf} look={setLooked} enterVisit={setVisits} visited={[...new Set(evenings.filter(({ visited }) => visited).map(({ squad }) => squad))]} />
      <section aria-labelledby="squads-and-days">
        <h2 id="squads-and-days">{say("table.title")}</h2>
        <p>{entered.length === 0 ? say("table.nothing_entered") : say("table.sums", { ...sums, minutes: number(sums.minutes) })}</p>
        <PlanAllButton planner={planner} />
        {without_plan > 0 && <p class="soft">{without_plan === squads.length ? say("table.no_plans") : many("without_plan", without_plan)}</p>}
        <WeekRows rows={rows} monday={monday} today={now.slice(0, 10)} tonightOf={(squad) => of.squads.find((each) => each.squad === squad)?.tonight} look={setLooked} />
      </section>
      {looked !== undefined && <WhoJoinsIn squad={looked} name={nameOf(looked)} onClose={() => setLooked(undefined)} />}
      {visits !== undefined && <VisitForm squad={visits} name={nameOf(visits)} evenings={seenEvenings(evenings, visits)} again={again} onClose={() => setVisits(undefined)} />}
    </>
  );
}

export function Screen({ route }: ScreenProps<"week">) {
  useDrillNames();
  const now = momentOf(new Date());
  const this_monday = mondayOf(now.slice(0, 10));
  const monday = mondayOf(route.monday ?? this_monday);
  useEffect(() => {
    if (route.monday !== undefined && route.monday !== monday) go(hashOf("week", monday), { replace: true });
  }, [route.monday, monday]);
  const squads = useAsked("week-of-squads", { monday });
  const week = useAsked("week", { monday });
  const before = useAsked("week", { monday: dayAfter(monday, -7) });
  const again = () => Promise.all([squads.again(), week.again(), before.again()]);
  return (
    <div class="week-screen">
      <Head title={say("title", { range: rangeOf(monday, dayAfter(monday, 6)) })}>
        <Weeks monday={monday} this_monday={this_monday} />
      </Head>
      <Of asked={squads}>
        {(of) => (
          <Of asked={week}>
            {(own) => <Of asked={before}>{(earlier) => <Week key={monday} monday={monday} of={of} entered={[...earlier.evenings, ...own.evenings]} now={now} again={again} />}</Of>}
          </Of>
        )}
      </Of>
    </div>
  );
}
