// One release, as it was given out: is it done, is it done well, does it work. Printed as it stands.
import type { Release, ReleaseDone, ReleaseRate, ReleaseRow } from "../../shared/api.ts";
import { list, moment, number, wholeDay } from "../../shared/words/words.ts";
import { type Column, Table } from "../shell/table.tsx";
import { many, say } from "./words.ts";

const rateWords = ({ rate, low, high }: ReleaseRate): string => say("rate", { rate: number(rate), low: number(low), high: number(high) });

export function ReleasePage({ release, drawn = false }: { release: Release; drawn?: boolean }) {
  const { all } = release.sessions;
  const told = all.held + all.cut_short + all.missed;
  return (
    <article class="release">
      <h2>
        {release.club}, {say("from_until", { from: wholeDay(release.from), until: wholeDay(release.until) })}
      </h2>
      <p class="soft">{drawn ? say("drawn") : say("stands", { when: moment(release.made) })}</p>
      <h3>{say("done.title")}</h3>
      <p>{say("done.sentence", { held: number(all.held), told: number(told), cut_short: number(all.cut_short), missed: number(all.missed) })}</p>
      {all.most_did_it_percent === undefined ? null : <p>{say("done.well", { percent: number(all.most_did_it_percent) })}</p>}
      <Sessions squads={release.sessions.squads} />
      <h3>{say("injuries.title")}</h3>
      <Injuries release={release} />
      <ul>
        {release.remarks.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </article>
  );
}

function Sessions({ squads }: { squads: ReleaseDone[] }) {
  const counted = (key: "held" | "cut_short" | "missed" | "most" | "half" | "few" | "hours"): Column<ReleaseDone> => ({
    key, heading: say(`done.${key}`), numeric: true, cell: (row) => number(row[key]), value: (row) => row[key],
  });
  const columns: Column<ReleaseDone>[] = [
    { key: "name", heading: say("done.squad"), names: true, cell: ({ name }) => <bdi>{name}</bdi>, value: ({ name }) => name ?? "" },
    ...(["held", "cut_short", "missed", "most", "half", "few", "hours"] as const).map(counted),
  ];
  return <Table caption={say("done.title")} columns={columns} rows={squads} rowKey={({ key }) => key ?? ""} />;
}

function Injuries({ release: { injuries, hidden_means } }: { release: Release }) {
  if (injuries.silent) return <p>{say("injuries.silent")}</p>;
  return (
    <>
      <p>
        {many("injuries", injuries.all ?? 0)} {injuries.per_1000_hours ? rateWords(injuries.per_1000_hours) : say("injuries.no_rate")}
      </p>
      <p class="soft">{say("injuries.one_by_one", { hidden: hidden_means })}</p>
      <div class="side-by-side">
        {(["squads", "settings", "regions"] as const).map((table) => (
          <Counts key={table} caption={say(`injuries.${table}`)} rows={injuries[table] ?? []} />
        ))}
      </div>
      <p>{say("injuries.says")}</p>
    </>
  );
}

// What is hidden is not a nought: it stands below in words, and nothing of it looks like a number.
function Counts({ caption, rows }: { caption: string; rows: ReleaseRow[] }) {
  const columns: Column<ReleaseRow>[] = [
    { key: "name", heading: caption, names: true, cell: ({ name }) => <bdi>{name}</bdi>, value: ({ name }) => name },
    { key: "count", heading: say("injuries.count"), numeric: true, cell: ({ count }) => number(count ?? NaN), value: ({ count }) => count ?? NaN },
    { key: "rate", heading: say("injuries.rate"), cell: (row) => (row.per_1000_hours ? rateWords(row.per_1000_hours) : "") },
  ];
  const shown = rows.filter(({ count }) => count !== undefined);
  const hidden = rows.filter(({ count }) => count === undefined);
  return (
    <section>
      {shown.length > 0 ? <Table caption={caption} columns={columns} rows={shown} rowKey={({ key }) => key} /> : <h4>{caption}</h4>}
      {hidden.length > 0 ? <p>{say("injuries.hidden", { names: list(hidden.map(({ name }) => name)) })}</p> : null}
    </section>
  );
}
