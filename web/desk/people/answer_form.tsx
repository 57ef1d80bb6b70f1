// What a guardian or the child answered, on paper or in person, written down: one entry for each thing that was asked, as
// docs/model/consent.md counts them. Nothing here takes an answer back: another answer is another entry.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { enter, type NewEntry, newEntry } from "../api/enter.ts";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { Choice } from "./choice.tsx";
import { kPurposes } from "./consent_state.ts";
import { many, say } from "./words.ts";

const kMostAtOnce = 50; // entries that the server takes together
const kPaper = /^[\w.-]{0,64}$/; // as a key of the ledger
const kAnswers = ["given", "refused", "withdrawn"] as const;
const kWho = ["guardian", "first", "second", "player"] as const;

interface AnswerFormProps {
  players: string[]; // the same answer of each
  today: string; // '2026-11-27', by the club's clock
  entered: () => unknown;
  onClose: () => void;
}

// What 'first' and 'second' mean is said of a guardian; 'guardian' is the only one.
function whoseFields(who: (typeof kWho)[number]): Record<string, string> {
  if (who === "player") return { by: "player" };
  return who === "guardian" ? { by: "guardian" } : { by: "guardian", guardian: who };
}

// In pieces that the server takes; what was kept of them stays, and the same answer again changes nothing.
async function enterAll(entries: NewEntry[]): Promise<Refusal | undefined> {
  for (let at = 0; at < entries.length; at += kMostAtOnce) {
    const why = await enter(entries.slice(at, at + kMostAtOnce));
    if (why) return why;
  }
  return undefined;
}

export function AnswerForm({ players, today, entered, onClose }: AnswerFormProps) {
  const [purposes, setPurposes] = useState<string[]>([]); // nobody has agreed by not being asked
  const [answer, setAnswer] = useState<(typeof kAnswers)[number] | "">("");
  const [who, setWho] = useState<(typeof kWho)[number]>("guardian");
  const [day, setDay] = useState(today);
  const [paper, setPaper] = useState("");
  const [fault, setFault] = useState<"choose" | "no_answer" | "no_paper" | undefined>();
  const [sends, setSends] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const submit = async (event: Event) => {
    event.preventDefault();
    const wrong = purposes.length === 0 ? "choose" : answer === "" ? "no_answer" : kPaper.test(paper.trim()) ? undefined : "no_paper";
    setFault(wrong);
    if (wrong || sends) return;
    const signed = paper.trim() ? { text_version: paper.trim() } : {};
    setSends(true);
    const why = await enterAll(players.flatMap((player) => purposes.map((purpose) => newEntry("consent", { player, purpose, answer, day, ...whoseFields(who), ...signed }))));
    setSends(false);
    setRefused(why);
    if (why) return;
    announce(say("answer.done"));
    await entered();
    onClose();
  };
  return (
    <Dialog title={say("answer.title")} onClose={onClose}>
      <p>{say("answer.what")}</p>
      {players.length > 1 ? <p>{many("answer_for", players.length)}</p> : null}
      <form onSubmit={(event) => void submit(event)}>
        <fieldset class="squads">
          <legend>{say("answer.purposes")}</legend>
          {kPurposes.map((purpose) => (
            <label key={purpose} class="tick">
              <input
                type="checkbox"
                checked={purposes.includes(purpose)}
                onChange={(event) => setPurposes(event.currentTarget.checked ? [...purposes, purpose] : purposes.filter((one) => one !== purpose))}
              />
              {say(`purpose.${purpose}`)}
            </label>
          ))}
        </fieldset>
        {fault === "choose" ? <p class="fault">{say("answer.choose")}</p> : null}
        <Choice label={say("answer.answer")} value={answer} options={[["", say("answer.unsaid")], ...kAnswers.map((one): [string, string] => [one, say(`value.${one}`)])]} onChange={(one) => setAnswer(one as typeof answer)} {...(fault === "no_answer" ? { fault: say("answer.no_answer") } : {})} />
        <Choice label={say("answer.who")} hint={say("answer.who_hint")} value={who} options={kWho.map((one) => [one, say(`answer.by.${one}`)])} onChange={(one) => setWho(one as typeof who)} />
        <Field label={say("answer.day")}>{(given) => <input {...given} type="date" required max={today} value={day} onInput={(event) => setDay(event.currentTarget.value)} />}</Field>
        <Field label={say("answer.paper")} hint={say("answer.paper_hint")} {...(fault === "no_paper" ? { fault: say("answer.no_paper") } : {})}>
          {(given) => <input {...given} value={paper} onInput={(event) => setPaper(event.currentTarget.value)} autocomplete="off" spellcheck={false} />}
        </Field>
        {refused ? <Refused refusal={refused} /> : null}
        <button type="submit" class="main" aria-disabled={sends}>
          {say("answer.enter")}
        </button>
      </form>
    </Dialog>
  );
}
