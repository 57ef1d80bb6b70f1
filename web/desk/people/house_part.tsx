// How long things are kept and what goes next, how it stands with the copies of the books, and how old the key is. What is
// done about any of it is done on the server's machine.
import { moment, number, wholeDay } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { Table } from "../shell/table.tsx";
import { CopiesPart } from "./copies_part.tsx";
import { many, say } from "./words.ts";

const kYear = 365; // days, as the table of what is kept counts them

const keptFor = (days: number): string => (days % kYear === 0 ? many("years", days / kYear) : many("days", days));

export function HousePart() {
  const asked = useAsked("house", {});
  return (
    <Of asked={asked}>
      {(house) => (
        <>
          <CopiesPart backup={house.backup} />
          <section class="sheet" aria-labelledby="retention">
            <h2 id="retention">{say("house.retention")}</h2>
            <p>{say("house.retention_means")}</p>
            <Table
              caption={say("house.retention")}
              rows={house.retention}
              rowKey={({ class: of }) => of}
              columns={[
                { key: "class", heading: say("house.what"), names: true, cell: ({ class: of }) => say(`house.class.${of}`) },
                { key: "keeps", heading: say("house.keeps"), cell: ({ keeps_days }) => keptFor(keeps_days) },
                { key: "next", heading: say("house.next"), cell: ({ next_day }) => (next_day ? wholeDay(next_day) : say("house.nothing_due")) },
                { key: "would", heading: say("house.would_go"), numeric: true, cell: ({ next_day, would_go }) => (next_day ? number(would_go) : "") },
              ]}
            />
          </section>
          {house.key_since ? (
            <section class="sheet" aria-labelledby="key">
              <h2 id="key">{say("house.key")}</h2>
              <p>{say("house.key_since", { when: moment(house.key_since) })}</p>
            </section>
          ) : null}
        </>
      )}
    </Of>
  );
}
