// Injuries of a release: the club's rate as wide as it is uncertain, counts by one thing at a time, and what is hidden in words.
import type { Release, ReleaseCompared, ReleaseRate, ReleaseRow } from "../../shared/api.ts";
import { language, number, wholeDay } from "../../shared/words/words.ts";
import { type Column, Table } from "../shell/table.tsx";
import { type CountedBy, rowWords } from "./key_words.ts";
import { RateSpan, scaleEnd } from "./rate_span.tsx";
import { many, say } from "./words.ts";

const one = (value: number): string => new Intl.NumberFormat(language.value, { minimumFractionDigits: 1, maximumFractionDigits: 1 }).format(value);

export const rateWords = ({ rate, low, high }: ReleaseRate): string => say("rate", { rate: one(rate), low: one(low), high: one(high) });

const two = (value: number): string => new Intl.NumberFormat(language.value, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(value);

const comparedWords = ({ from, until, ratio, low, high }: ReleaseCompared): string =>
  say("compared", { from: wholeDay(from), until: wholeDay(until), ratio: two(ratio), low: two(low), high: two(high) });

// The club's rate alone. Squads' rates are given where a count is shown, so of those squads only that had many injuries: side
// by side they would all look worse than the club (docs/model/board_page_read.md).
export function InjuriesSection({ release: { injuries } }: { release: Release }) {
  const { per_1000_hours: rate } = injuries;
  return (
    <>
      <h3>{say("injuries.title")}</h3>
      {injuries.silent ? (
        <p>{say("injuries.silent")}</p>
      ) : (
        <>
          <p>
            {many("injuries", injuries.all ?? 0)} {rate ? rateWords(rate) : say("injuries.no_rate")}
          </p>
          {rate ? <ClubRate rate={rate} /> : null}
          {injuries.compared ? <p>{comparedWords(injuries.compared)}</p> : null}
          <p class="soft">{say("injuries.one_by_one")}</p>
          <div class="side-by-side">
            {(["squads", "settings", "regions"] as const).map((by) => (
              <Counts key={by} by={by} rows={injuries[by] ?? []} />
            ))}
          </div>
        </>
      )}
    </>
  );
}

function ClubRate({ rate }: { rate: ReleaseRate }) {
  const end = scaleEnd([rate]);
  return (
    <figure class="club-rate">
      <RateSpan rate={rate} end={end} />
      <p class="ends" aria-hidden="true">
        <span>{number(0)}</span>
        <span>{number(end)}</span>
      </p>
      <figcaption class="soft">{say("injuries.drawn")}</figcaption>
    </figure>
  );
}

// What is hidden is not a nought: that there is more stands below in words, and nothing of it looks like a number.
function Counts({ by, rows }: { by: CountedBy; rows: ReleaseRow[] }) {
  const caption = say(`injuries.${by}`);
  const columns: Column<ReleaseRow>[] = [
    { key: "name", heading: say(`injuries.heading.${by}`), names: true, cell: (row) => <bdi>{rowWords(by, row)}</bdi>, value: (row) => rowWords(by, row) },
    { key: "count", heading: say("injuries.count"), numeric: true, cell: ({ count }) => number(count ?? NaN), value: ({ count }) => count ?? NaN },
  ];
  const shown = rows.filter(({ count }) => count !== undefined);
  const hidden = rows.length - shown.length;
  return (
    <section>
      {shown.length > 0 ? <Table caption={caption} show_caption columns={columns} rows={shown} rowKey={({ key }) => key} /> : <h4>{caption}</h4>}
      {hidden > 0 ? <p>{shown.length > 0 ? many("others_hidden", hidden) : many("all_hidden", hidden)}</p> : null}
    </section>
  );
}
