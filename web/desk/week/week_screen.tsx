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
import { plannedOf, readPlans } from "./planned_evenings.ts";
import { helpAsked, visitsOf } from "./visits.ts";
import { eveningsOf, sumsOf, weekTable, type Entered, type SquadRow, type SquadWeek } from "./week_table.ts";
import { WeekRows } from "./week_rows.tsx";
import { WhoJoinsIn } from "./who_joins_in.tsx";
import { rangeOf, say } from "./words.ts";

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

// How far the plans have been read: a squad whose plan is not known has no evenings to come.
function PlansRead({ squads }: { squads: SquadRow[] }) {
  const plans = plannedOf.value;
  const known = squads.filter(({ id }) => plans.has(id)).length;
  const missing = squads.filter(({ id }) => plans.get(id) === "unknown").length;
  if (known < squads.length) return <p class="soft">{say("table.plans_on_their_way", { known, of: squads.length })}</p>;
  if (missing > 0) return <p role="alert">{say("table.plans_missing", { count: missing })}</p>;
  if (squads.every(({ id }) => plans.get(id)?.length === 0)) return <p class="soft">{say("table.no_plans")}</p>;
  return null;
}

interface WeekProps {
  monday: string;
  squads: SquadRow[];
  entered: Entered[]; // of this week and the one before
  now: string;
}

function Week({ monday, squads, entered, now }: WeekProps) {
  const [looked, setLooked] = useState<SquadWeek | undefined>();
  const planned = squads.flatMap(({ id }) => {
    const own = plannedOf.value.get(id);
    return Array.isArray(own) ? own : [];
  });
  const from = dayAfter(monday, -7);
  const until = dayAfter(monday, 6);
  const evenings = eveningsOf(entered, planned, now).filter(({ day }) => day >= from && day <= until);
  const rows = weekTable(squads, evenings, monday);
  const sums = sumsOf(rows);
  const nameOf = (squad: string) => squads.find(({ id }) => id === squad)?.name ?? squad;
  return (
    <>
      <Decisions visits={visitsOf(squads, evenings)} help={helpAsked(evenings)} anything={entered.length > 0} until={now.slice(0, 10) < until ? now.slice(0, 10) : until} nameOf={nameOf} />
      <section aria-labelledby="squads-and-days">
        <h2 id="squads-and-days">{say("table.title")}</h2>
        <p>{say("table.sums", { ...sums, minutes: number(sums.minutes) })}</p>
        <PlansRead squads={squads} />
        <WeekRows rows={rows} monday={monday} today={now.slice(0, 10)} look={setLooked} />
      </section>
      {looked && <WhoJoinsIn squad={looked.squad} name={looked.name} onClose={() => setLooked(undefined)} />}
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
  const squads = useAsked("squads", {});
  const week = useAsked("week", { monday });
  const before = useAsked("week", { monday: dayAfter(monday, -7) });
  const all = squads.said?.squads;
  useEffect(() => {
    if (all) void readPlans(all);
  }, [all]);
  return (
    <div class="week-screen">
      <Head title={say("title", { range: rangeOf(monday, dayAfter(monday, 6)) })}>
        <Weeks monday={monday} this_monday={this_monday} />
      </Head>
      <Of asked={squads} height="table">
        {(said) => (
          <Of asked={week}>
            {(own) => <Of asked={before}>{(earlier) => <Week monday={monday} squads={said.squads} entered={[...earlier.evenings, ...own.evenings]} now={now} />}</Of>}
          </Of>
        )}
      </Of>
    </div>
  );
}
