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

// 'always 2, mostly 5, seldom 0, left open 1'
function countsOf(key: ChoiceKey, latest: Answers[]): string {
  const words = [...kChoices[key]].map((word) => [say(`survey.word.${word}`), latest.filter((one) => one[key] === word).length] as const);
  const open = [say("survey.open"), latest.filter((one) => !isChoice(key, one[key])).length] as const;
  return [...words, open].map(([word, count]) => `${word} ${number(count)}`).join(", ");
}

export function SurveyOfAll({ coaches }: { coaches: Coach[] }) {
  const latest = coaches.flatMap((coach) => latestOf(coach) ?? []).map(answersIn);
  if (latest.length === 0) return null;
  return (
    <section class="sheet" aria-labelledby="survey-of-all">
      <h2 id="survey-of-all">{say("survey.heading")}</h2>
      <p>
        {many("answered", latest.length, { all: number(coaches.length) })} {latest.length < coaches.length ? say("survey.not_known") : ""}
      </p>
      <Table
        caption={say("survey.counted")}
        rows={kChoiceKeys.map((key) => ({ key }))}
        rowKey={({ key }) => key}
        columns={[
          { key: "question", heading: say("survey.question"), names: true, cell: ({ key }) => say(`survey.ask.${key}`) },
          { key: "counts", heading: say("survey.counts"), cell: ({ key }) => countsOf(key, latest) },
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
