// The answers of one coach, as they were said. Every question may be left open; nobody is graded by them.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { enter, newEntry } from "../api/enter.ts";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { undo } from "../shell/undo.ts";
import { type Answers, kChoiceKeys, kChoices, kForm, kMostLetters, kTexts, linesOf } from "./survey.ts";
import { say } from "./words.ts";

interface SurveyFormProps {
  coach: string; // the account
  today: string;
  again: () => Promise<unknown>;
  onClose: () => void;
}

export function SurveyForm({ coach, today, again, onClose }: SurveyFormProps) {
  const [answers, setAnswers] = useState<Answers>({});
  const [day, setDay] = useState(today);
  const [note, setNote] = useState("");
  const [empty, setEmpty] = useState(false);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    const lines = linesOf(answers);
    const nothing = lines.length === 0 && note.trim() === "";
    setEmpty(nothing);
    if (nothing || sends) return;
    const entry = newEntry("coach-asked", { coach, day, form: kForm, ...(lines.length > 0 ? { answers: lines } : {}), ...(note.trim() ? { note: note.trim().replace(/\s+/g, " ") } : {}) });
    setSends(true);
    const why = await enter([entry]);
    setSends(false);
    setRefused(why);
    if (why) return;
    onClose();
    await again();
    const back = async () => {
      const not = await enter([newEntry("coach-entry-never-was", { coach, entry: entry.id })]);
      announce(not ? not.words : say("taken_back"));
      await again();
    };
    undo.offer({ words: say("survey.kept"), undo: back });
  };
  return (
    <Dialog title={say("survey.title")} wide onClose={onClose}>
      <form onSubmit={(event) => void submit(event)}>
        <p>{say("survey.about")}</p>
        {kChoiceKeys.map((key) => (
          <fieldset key={key} class="survey">
            <legend>{say(`survey.ask.${key}`)}</legend>
            <span class="row">
              {kChoices[key].map((word) => (
                <label key={word} class="tick">
                  <input type="radio" name={`survey-${key}`} checked={answers[key] === word} onChange={() => setAnswers({ ...answers, [key]: word })} />
                  {say(`survey.word.${word}`)}
                </label>
              ))}
            </span>
          </fieldset>
        ))}
        {kTexts.map((key) => (
          <Field key={key} label={say(`survey.ask.${key}`)}>
            {(given) => <input {...given} maxLength={kMostLetters} value={answers[key] ?? ""} onInput={(event) => setAnswers({ ...answers, [key]: event.currentTarget.value })} autocomplete="off" />}
          </Field>
        ))}
        <Field label={say("survey.note")} hint={say("survey.note_hint")}>
          {(given) => <textarea {...given} rows={2} maxLength={1000} value={note} onInput={(event) => setNote(event.currentTarget.value)} />}
        </Field>
        <Field label={say("survey.day")}>{(given) => <input {...given} type="date" required max={today} value={day} onInput={(event) => setDay(event.currentTarget.value)} />}</Field>
        {empty ? <p class="fault">{say("survey.empty")}</p> : null}
        {refused ? <Refused refusal={refused} /> : null}
        <button type="submit" class="main" aria-disabled={sends}>
          {say("survey.enter")}
        </button>
      </form>
    </Dialog>
  );
}
