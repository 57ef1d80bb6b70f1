// Evidence: the season's report, worked out from the ledger as it is now, for the days in the address.
import { useEffect, useState } from "preact/hooks";
import type { Season } from "../../shared/api.ts";
import type { Refusal } from "../api/answer.ts";
import { askForFile, saveAs } from "../api/ask_file.ts";
import { Refused, useAsked } from "../api/asked.tsx";
import { Empty, Head } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { faultsOf, isDay, lastFourWeeks, type Period, seasonSoFar } from "./period.ts";
import { PeriodForm, type Usual } from "./period_form.tsx";
import { ReportView } from "./report_view.tsx";
import { type Report, useReport } from "./use_report.ts";
import { say } from "./words.ts";

// As the lead's own clock has it.
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

// Undefined until the club's own season is known, or known not to be told.
function useUsual(): Usual | undefined {
  const asked = useAsked("club-documents", {});
  if (!asked.said && !asked.refused) return undefined;
  const club = asked.said?.documents.find(({ path }) => path === "club.toml")?.content;
  return [
    { word: "so_far", period: seasonSoFar(club, today()) },
    { word: "four_weeks", period: lastFourWeeks(today()) },
  ];
}

function periodOf({ from, to }: Record<string, string>): Period | undefined {
  const faults = faultsOf(from, to);
  return isDay(from) && isDay(to) && !faults.to ? { from, to } : undefined;
}

export function Screen({ route }: ScreenProps<"evidence">) {
  const { from, to, section } = route.further;
  const usual = useUsual();
  const bare = from === undefined && to === undefined;
  const period = periodOf(route.further);
  const { report, refused, again } = useReport(period);
  useEffect(() => {
    if (bare && usual?.[0]) go(hashOf("evidence", undefined, { ...usual[0].period }), { replace: true });
  }, [bare, usual !== undefined]);
  return (
    <div class="evidence">
      <Head title={say("title")}>
        <p class="not-on-paper">{say("what")}</p>
      </Head>
      <PeriodForm shown={{ ...(from ? { from } : {}), ...(to ? { to } : {}) }} usual={usual ?? []} again={again} />
      {refused ? <Refused refusal={refused} again={again} /> : null}
      {(period && !report && !refused) || bare ? (
        <p class="waiting screen-tall" role="status">
          {say("waiting")}
        </p>
      ) : null}
      {report && period ? <Shown report={report} period={period} section={section} /> : null}
    </div>
  );
}

function save(season: Season, { from, to }: Period): void {
  saveAs(`evidence-${from}-${to}.json`, new Blob([`${JSON.stringify(season, null, 2)}\n`], { type: "application/json" }));
}

function Shown({ report, period, section }: { report: Report; period: Period; section: string | undefined }) {
  const [refused, setRefused] = useState<Refusal | undefined>();
  if (report.season.nothing) return <NothingYet />;
  const sheets = async () => setRefused(await askForFile(`season-${period.from}-${period.to}.zip`, "export-season", { ...period }));
  return (
    <>
      <p class="row not-on-paper">
        <button type="button" onClick={() => window.print()}>
          {say("print")}
        </button>
        <button type="button" onClick={() => save(report.season, period)}>
          {say("download")}
        </button>
        <button type="button" onClick={() => void sheets()}>
          {say("sheets")}
        </button>
      </p>
      {refused ? <Refused refusal={refused} /> : null}
      <ReportView report={report} period={period} section={section} />
    </>
  );
}

function NothingYet() {
  return (
    <Empty title={say("empty.title")}>
      <p>{say("empty.what")}</p>
      <ul>
        <li>{say("empty.evenings")}</li>
        <li>{say("empty.injuries")}</li>
        <li>{say("empty.answers")}</li>
      </ul>
      <a href={hashOf("week")}>{say("empty.step")}</a>
    </Empty>
  );
}
