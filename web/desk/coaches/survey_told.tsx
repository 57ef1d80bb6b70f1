// What coaches answered: of one, and of all together in counts, with how many have not answered. Words are shown without
// whose they are, in no order of coaches.
import { number, wholeDay } from "../../shared/words/words.ts";
import { Written } from "../shell/parts.tsx";
import { Table } from "../shell/table.tsx";
import type { Coach } from "./coach.ts";
import { type Answers, answersIn, type Asked, type ChoiceKey, isChoice, kChoiceKeys, kChoices, kTexts, latestOf } from "./survey.ts";
import { many, say } from "./words.ts";

function choiceWords(key: ChoiceKey, answers: Answers): string {
  const word = answers[key];
  return isChoice(key, word) ? say(`survey.word.${word}`) : say("survey.open");
}

export function SurveyOfOne({ asked, ask }: { asked: Asked | undefined; ask: () => void }) {
  const answers = asked ? answersIn(asked) : {};
  return (
    <section class="sheet" aria-labelledby="survey">
      <h2 id="survey">{say("survey.heading")}</h2>
      {asked ? (
        <>
          <p class="soft">{say("survey.answered", { day: wholeDay(asked.day) })}</p>
          <dl class="pairs">
            {kChoiceKeys.map((key) => (
              <div key={key}>
                <dt>{say(`survey.ask.${key}`)}</dt>
                <dd>{choiceWords(key, answers)}</dd>
              </div>
            ))}
            {kTexts.map((key) => (answers[key] ? <div key={key}><dt>{say(`survey.ask.${key}`)}</dt><dd><Written text={answers[key]} /></dd></div> : null))}
            {asked.note ? <div><dt>{say("survey.note")}</dt><dd><Written text={asked.note} /></dd></div> : null}
          </dl>
        </>
      ) : (
        <p>{say("survey.none")}</p>
      )}
      <p class="not-on-paper">
        <button type="button" onClick={ask}>
          {say(asked ? "survey.anew" : "survey.write")}
        </button>
      </p>
    </section>
  );
}

interface Counted {
  question: string;
  word: string;
  count: number;
}

export function SurveyOfAll({ coaches }: { coaches: Coach[] }) {
  const latest = coaches.flatMap((coach) => latestOf(coach) ?? []).map(answersIn);
  if (latest.length === 0) return null;
  const rows = kChoiceKeys.flatMap((key) => {
    const words = [...kChoices[key]].map((word): Counted => ({ question: say(`survey.ask.${key}`), word: say(`survey.word.${word}`), count: latest.filter((one) => one[key] === word).length }));
    return [...words, { question: say(`survey.ask.${key}`), word: say("survey.open"), count: latest.filter((one) => !isChoice(key, one[key])).length }];
  });
  return (
    <section class="sheet" aria-labelledby="survey-of-all">
      <h2 id="survey-of-all">{say("survey.heading")}</h2>
      <p>{many("answered", latest.length, { all: number(coaches.length) })}</p>
      <Table
        caption={say("survey.counted")}
        rows={rows}
        rowKey={({ question, word }) => `${question} ${word}`}
        columns={[
          { key: "question", heading: say("survey.question"), names: true, cell: ({ question }) => question },
          { key: "word", heading: say("survey.answer"), cell: ({ word }) => word },
          { key: "count", heading: say("survey.count"), numeric: true, cell: ({ count }) => number(count) },
        ]}
      />
      {kTexts.map((key) => {
        const texts = latest.flatMap((one) => one[key] ?? []).sort((left, right) => left.localeCompare(right));
        return texts.length === 0 ? null : (
          <div key={key}>
            <h3>{say(`survey.ask.${key}`)}</h3>
            <ul>
              {texts.map((text, at) => (
                <li key={at}>
                  <Written text={text} />
                </li>
              ))}
            </ul>
          </div>
        );
      })}
    </section>
  );
}
