// Partners and swaps, for the coach's eyes: names or shirts, and what to do. Never a reason, never a measure.
import { useEffect, useState } from "preact/hooks";
import { swapTold } from "../../shared/evening/reason_words.ts";
import type { SlipAnswer, SlipGroup, SlipSwap, TakesPart } from "../../shared/engine/answers.ts";
import { requestFor } from "../evening/request.ts";
import { knownWords } from "../words/known_words.ts";
import { say } from "../words/words.ts";
import { doseWords, nameOf, namesOf } from "./drill_words.ts";
import { CloseButton, Head } from "./parts.tsx";
import { knownAt, type Pitch } from "./pitch.ts";
import { whoIs } from "./who.tsx";

const kTakesPart: Record<TakesPart, "slip.joins_in" | "slip.joins_in_with_swaps" | "slip.sits_out"> = {
  "joins in": "slip.joins_in",
  "joins in with swaps": "slip.joins_in_with_swaps",
  "sits out, see a clinician": "slip.sits_out",
};

function Groups({ pitch, groups, alone }: { pitch: Pitch; groups: SlipGroup[]; alone: string[] }) {
  return (
    <ul class="list">
      {groups.map((group) => (
        <li key={group.players.join()}>
          <span>{group.players.map((player) => whoIs(pitch, player)).join(" + ")}</span>
          {group.non_contact && <strong>{say("slip.non_contact")}</strong>}
        </li>
      ))}
      {alone.map((player) => (
        <li key={player}>
          <span>{whoIs(pitch, player)}</span> <strong>{say("slip.alone")}</strong>
        </li>
      ))}
    </ul>
  );
}

function Instead({ pitch, swap: { kind, does, instruction } }: { pitch: Pitch; swap: SlipSwap["swaps"][number] }) {
  const dose = does ? doseWords(pitch.pack, { ...does, dose: "" }) : "";
  const told = swapTold(kind, does, dose, instruction, namesOf(pitch.pack));
  return <span lang={told.english ? "en" : undefined}>{told.words}</span>;
}

function Swaps({ pitch, slip }: { pitch: Pitch; slip: SlipAnswer }) {
  const held = slip.swaps.filter((swap) => swap.takes_part !== "joins in");
  if (held.length === 0) return <p>{say("slip.nobody")}</p>;
  return (
    <>
      {held.map((swap) => (
        <section key={swap.player}>
          <h3>{whoIs(pitch, swap.player)}</h3>
          <p>
            {say(kTakesPart[swap.takes_part])}
            {swap.instruction && <span lang="en">: {swap.instruction}</span>}
          </p>
          <ul>
            {swap.swaps.map((each) => (
              <li key={each.instead_of}>
                {say("slip.instead_of", { drill: nameOf(pitch.pack, each.instead_of) })} <Instead pitch={pitch} swap={each} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

export function SlipScreen({ pitch }: { pitch: Pitch }) {
  const [slip, setSlip] = useState<SlipAnswer | undefined>();
  const [trouble, setTrouble] = useState("");
  useEffect(() => {
    let wanted = true;
    const request = requestFor("slip", pitch.pack, pitch.evening.peek());
    if (request) {
      void pitch.engine.ask(request).then((answer) => {
        if (!wanted) return;
        if (answer.answer === "slip") setSlip(answer);
        else if (answer.answer === "faults") setTrouble(answer.faults[0]?.sentence ?? "");
        else if (answer.answer === "broken") setTrouble(answer.why);
      });
    }
    return () => {
      wanted = false;
    };
  }, []);
  const known_at = knownAt(pitch);
  return (
    <>
      <Head title={say("slip.title")}>
        <CloseButton pitch={pitch} />
      </Head>
      <main>
        <p>
          <strong>{say("slip.for_you")}</strong>{" "}
          <span class="soft">{known_at ? say("tonight.known", { when: knownWords(known_at) }) : say("tonight.never_known")}</span> {say("tonight.ask")}
        </p>
        {!pitch.names_shown.value && <p role="status">{say("slip.lease_over")}</p>}
        {trouble && <p role="alert">{trouble}</p>}
        {!slip && !trouble && <p role="status">{say("say.working")}</p>}
        {slip && (
          <>
            <h2>{say("slip.swaps")}</h2>
            <Swaps pitch={pitch} slip={slip} />
            <h2>{say("slip.partners")}</h2>
            <Groups pitch={pitch} groups={slip.groups} alone={slip.alone} />
            {slip.notes.map((note) => (
              <p key={note} lang="en">
                {note}
              </p>
            ))}
            {slip.regrouped.map((each) => (
              <section key={each.drill}>
                <h2>{say("slip.for_drill", { drill: nameOf(pitch.pack, each.drill) })}</h2>
                <Groups pitch={pitch} groups={each.groups} alone={each.alone} />
              </section>
            ))}
          </>
        )}
      </main>
    </>
  );
}
