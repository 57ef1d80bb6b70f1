// After the wrap-up: what was written down, who reads it, whether it is sent, and what is next.
import type { PlanItem } from "../../shared/engine/answers.ts";
import { standing } from "../evening/entered.ts";
import { nextEvening } from "../evening/next_evening.ts";
import { list, many, say, weekday } from "../words/words.ts";
import { nameOf } from "./drill_words.ts";
import { Head, HurtButton } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";

function Written({ pitch }: { pitch: Pitch }) {
  const { wrap_up, plan, marks, run } = pitch.evening.value;
  const items = plan?.items ?? [];
  const settled = ({ drill }: PlanItem) => (marks[drill] ?? []).filter((mark) => mark === "done" || mark === "skipped").pop();
  const names = (some: PlanItem[]) => list(some.map(({ drill }) => nameOf(pitch.pack, drill)));
  const done = items.filter((item) => settled(item) === "done");
  const skipped = items.filter((item) => settled(item) === "skipped");
  const rest = run ? items.filter((item) => settled(item) === undefined) : [];
  const { did_it, minutes } = wrap_up;
  return (
    <>
      <p>
        {say("wrap_up.were_there", { count: wrap_up.there })} {did_it && say(`wrap_up.it_was.${did_it}`)}{" "}
        {minutes !== undefined && minutes > 0 && say("wrap_up.minutes_long", { minutes: many("minutes", minutes) })}
      </p>
      {done.length > 0 && <p>{say("wrap_up.drills_done", { names: names(done) })}</p>}
      {skipped.length > 0 && <p>{say("wrap_up.drills_skipped", { names: names(skipped) })}</p>}
      {rest.length > 0 && <p>{say("wrap_up.not_come_to", { names: names(rest) })}</p>}
    </>
  );
}

function Readers({ pitch }: { pitch: Pitch }) {
  const { wrap_up, plan, hurt, facts } = pitch.evening.value;
  const help = (plan?.items ?? []).filter((item) => wrap_up.needs_help.includes(item.drill));
  return (
    <>
      <h2>{say("wrap_up.who_reads")}</h2>
      <p>{say("wrap_up.lead_reads")}</p>
      {help.length > 0 && (
        <p>
          <strong>{say("wrap_up.lead_helps", { names: list(help.map(({ drill }) => nameOf(pitch.pack, drill))) })}</strong>
        </p>
      )}
      {hurt.length + facts.sore.length > 0 && <p>{say("wrap_up.lead_hurt")}</p>}
    </>
  );
}

function Sent({ pitch }: { pitch: Pitch }) {
  const sent = pitch.waiting?.value === 0;
  return (
    <>
      <h2>{say("wrap_up.sent_title")}</h2>
      <p role="status">{sent ? say("wrap_up.sent") : say("wrap_up.waits")}</p>
    </>
  );
}

function Next({ pitch }: { pitch: Pitch }) {
  const next = nextEvening(pitch.pack, pitch.evening.value);
  return (
    <>
      <h2>{say("wrap_up.next_title")}</h2>
      {next && (
        <p class="sentence">
          <strong>{say("wrap_up.next", { day: weekday(next.day), start: next.start, strip: next.strip })}</strong>
        </p>
      )}
      <p>{next ? say("wrap_up.next_nothing") : say("wrap_up.next_none")}</p>
    </>
  );
}

export function FinishedScreen({ pitch }: { pitch: Pitch }) {
  const correctable = standing(pitch.evening.value, "wrap-up") !== undefined;
  return (
    <>
      <Head title={say("wrap_up.title")}>
        <HurtButton pitch={pitch} />
      </Head>
      <main>
        <p class="large" role="status">
          <strong>{say("wrap_up.finished")}</strong> {say("wrap_up.kept")}
        </p>
        <Written pitch={pitch} />
        {correctable && (
          <p>
            <button type="button" onClick={() => pitch.happen({ event: "correct-wrap-up" })}>
              {say("mistake.correct")}
            </button>
          </p>
        )}
        {correctable && <p class="soft">{say("mistake.corrects")}</p>}
        <Sent pitch={pitch} />
        <Readers pitch={pitch} />
        <Next pitch={pitch} />
      </main>
    </>
  );
}
