// Injuries: what is open with the days lost so far, what is over, a new one, and one of them with what holds its player back.
import { useState } from "preact/hooks";
import type { SquadRow } from "../../shared/api.ts";
import { wholeDay } from "../../shared/words/words.ts";
import type { Refusal } from "../api/answer.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { Empty, Head } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { dayOfNow, type Injury, isOpen } from "./injury.ts";
import { InjuryForm } from "./injury_form.tsx";
import { InjuryTable } from "./injury_table.tsx";
import { OneInjury } from "./one_injury.tsx";
import { type Persons, personsOf } from "./persons.ts";
import { many, say } from "./words.ts";

const kOverAtFirst = 50; // own judgement: more take long to draw, and are seldom looked at

interface ListsProps {
  injuries: Injury[];
  without_consent: number;
  squads: SquadRow[];
}

function Lists({ injuries, without_consent, squads }: ListsProps) {
  const [persons, setPersons] = useState<Persons | undefined>();
  const [asks, setAsks] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const open = injuries.filter(isOpen);
  const [all, setAll] = useState(false);
  const over = injuries.filter((one) => !isOpen(one)).sort((left, right) => right.day.localeCompare(left.day));
  const show = async () => {
    setAsks(true);
    const said = await personsOf();
    setAsks(false);
    const had = said instanceof Map;
    setRefused(had ? undefined : said);
    if (!had) return;
    setPersons(said);
    announce(say("list.shown"));
  };
  return (
    <>
      <section class="sheet" aria-labelledby="open">
        <h2 id="open">{say("list.open")}</h2>
        {open.length === 0 ? (
          <Empty title={say("list.none")}>
            <p>{say("list.none_how")}</p>
          </Empty>
        ) : (
          <>
            {persons ? null : (
              <p class="row not-on-paper">
                <button type="button" aria-disabled={asks} onClick={() => void (asks || show())}>
                  {say("list.show_names")}
                </button>
                <span class="soft">{say("list.noted")}</span>
              </p>
            )}
            {refused ? <Refused refusal={refused} /> : null}
            <InjuryTable caption={say("list.open")} injuries={open} persons={persons} squads={squads} />
          </>
        )}
        {without_consent > 0 ? <p>{many("without_consent", without_consent)}</p> : null}
      </section>
      {over.length > 0 ? (
        <section class="sheet" aria-labelledby="over">
          <h2 id="over">{say("list.over")}</h2>
          <InjuryTable caption={say("list.over")} injuries={all ? over : over.slice(0, kOverAtFirst)} persons={persons} squads={squads} />
          {all || over.length <= kOverAtFirst ? null : (
            <p class="row not-on-paper">
              <button type="button" onClick={() => setAll(true)}>
                {many("show_over", over.length)}
              </button>
            </p>
          )}
        </section>
      ) : null}
    </>
  );
}

export function Screen({ route: { injury, further } }: ScreenProps<"injuries">) {
  const asked = useAsked("injuries", {});
  const squads = useAsked("squads", {});
  const today = dayOfNow(new Date());
  const enters = injury === undefined && further.enter !== undefined;
  const entered = async ({ id, hurt }: { id: string; hurt: boolean }) => {
    await asked.again();
    announce(say(hurt ? "told.entered_and_hurt" : "told.entered"));
    go(hashOf("injuries", id));
  };
  return (
    <div class="injuries-screen">
      <Head title={say(enters ? "form.title" : "title")}>
        <p>{say("rules")}</p>
      </Head>
      {injury === undefined && !enters ? (
        <p class="row not-on-paper">
          <a class="button main" href={hashOf("injuries", undefined, { enter: "new" })}>
            {say("form.open")}
          </a>
        </p>
      ) : (
        <p>
          <a href={hashOf("injuries")}>{say("all")}</a>
        </p>
      )}
      {enters ? (
        <InjuryForm today={today} entered={(done) => void entered(done)} />
      ) : (
        <Of asked={asked}>
          {({ injuries, without_consent }) => {
            if (injury === undefined) return <Of asked={squads}>{(said) => <Lists injuries={injuries} without_consent={without_consent} squads={said.squads} />}</Of>;
            const one = injuries.find((each) => each.injury === injury);
            if (one) return <OneInjury key={injury} injury={one} today={today} again={() => asked.again()} />;
            return (
              <Empty title={say("nothing_here")}>
                <p>{say("nothing_here_why", { day: wholeDay(today) })}</p>
              </Empty>
            );
          }}
        </Of>
      )}
    </div>
  );
}
