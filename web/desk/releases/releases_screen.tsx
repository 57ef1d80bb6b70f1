// What the board is given: for the lead to draw, look at and give out; for a board member to read and print.
import { useState } from "preact/hooks";
import { moment, wholeDay } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { me } from "../api/coming_in.ts";
import { Empty, Head } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { Table } from "../shell/table.tsx";
import { DrawRelease } from "./draw_release.tsx";
import { ReleasePage } from "./release_page.tsx";
import { say } from "./words.ts";

export function Screen({ route }: ScreenProps<"releases">) {
  const lead = me.value?.role === "lead";
  return (
    <>
      <Head title={say("title")}>
        <p class="not-on-paper">{say(lead ? "what_lead" : "what_board")}</p>
      </Head>
      {route.release ? <One release={route.release} /> : <All lead={lead} />}
    </>
  );
}

function One({ release }: { release: string }) {
  const asked = useAsked("release", { release });
  return (
    <>
      <p class="row not-on-paper">
        <a href={hashOf("releases")}>{say("all")}</a>
        <button type="button" onClick={() => window.print()}>
          {say("print")}
        </button>
      </p>
      <Of asked={asked}>{(said) => <ReleasePage release={said} />}</Of>
    </>
  );
}

function All({ lead }: { lead: boolean }) {
  const asked = useAsked("releases", {});
  const [draws, setDraws] = useState(false);
  return (
    <>
      {lead && !draws ? (
        <p class="not-on-paper">
          <button type="button" class="main" onClick={() => setDraws(true)}>
            {say("draw.open")}
          </button>
        </p>
      ) : null}
      <Of asked={asked} height="table">
        {({ releases }) =>
          releases.length === 0 ? (
            <None lead={lead} hidden={draws} />
          ) : (
            <Table
              caption={say("given")}
              rows={releases}
              rowKey={({ release }) => String(release)}
              columns={[
                {
                  key: "period", heading: say("period"), names: true, value: ({ from }) => from,
                  cell: ({ release, from, until }) => <a href={hashOf("releases", String(release))}>{say("from_until", { from: wholeDay(from), until: wholeDay(until) })}</a>,
                },
                { key: "made", heading: say("made"), cell: ({ made }) => moment(made), value: ({ made }) => made },
              ]}
            />
          )
        }
      </Of>
      {lead && draws ? <DrawRelease /> : null}
    </>
  );
}

function None({ lead, hidden }: { lead: boolean; hidden: boolean }) {
  if (hidden) return null;
  return (
    <Empty title={say("none")}>
      <p>{say(lead ? "none_lead" : "none_board")}</p>
    </Empty>
  );
}
