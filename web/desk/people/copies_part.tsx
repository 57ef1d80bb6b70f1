// When the books were last copied and whether that copy was tried, how old both are, and what is to be done where one is due.
// It is done on the server's machine, not here: the commands stand here, with the names of this club's own copy.
import { moment } from "../../shared/words/words.ts";
import type { Said } from "../api/answer.ts";
import { type Standing, standingOf } from "./copies.ts";
import { many, say } from "./words.ts";

type Noted = Said<"house">["backup"];

const agoWords = (days: number): string => (days === 0 ? say("house.today") : many("ago", days));

function copiedWords({ last, where }: Noted, { copied_days = 0 }: Standing): string {
  return say("house.last", { when: moment(last!), where: where ? say("house.where", { file: where }) : "", ago: agoWords(copied_days) });
}

function triedWords({ checked, checked_one }: Noted, { tried_days = 0 }: Standing): string {
  if (!checked) return say("house.unchecked");
  const tried = { when: moment(checked), ago: agoWords(tried_days) };
  return checked_one ? say("house.checked", { which: moment(checked_one), ...tried }) : say("house.checked_one", tried);
}

// The days in them are this club's: of today's copy, and of the last one, which is noted by the moment it was made.
function Steps({ last, where }: Noted) {
  const file = where ?? `${new Date().toLocaleDateString("sv")}.backup`;
  const steps = [
    ["once", "lanework backup keys --out keys"],
    ["nightly", `lanework backup --ledger books --to /media/stick/${new Date().toLocaleDateString("sv")}.backup --for keys/backup.public`],
    ["weekly", `lanework backup check ${file} --private backup.private --key ledger.key`],
    ["noted", `lanework backup checked ${last ?? "…"} --ledger books`],
    ["lost", `lanework restore ${file} --private backup.private --key ledger.key --ledger books-again --erased erased.list`],
  ] as const;
  return (
    <ul class="commands">
      {steps.map(([step, command]) => (
        <li key={step}>
          {say(`house.step.${step}`)}
          <code>{command}</code>
        </li>
      ))}
    </ul>
  );
}

export function CopiesPart({ backup }: { backup: Noted }) {
  const standing = standingOf(backup, Date.now());
  const { copy_due, trial_due } = standing;
  return (
    <section aria-labelledby="copies">
      <h2 id="copies">{say("house.backup")}</h2>
      <div class={copy_due ? "due" : undefined}>
        <p>{backup.last ? copiedWords(backup, standing) : say("house.never")}</p>
        {copy_due ? <p>{say("house.copy_due")}</p> : null}
      </div>
      {backup.last ? (
        <div class={trial_due ? "due" : undefined}>
          <p>{triedWords(backup, standing)}</p>
          {trial_due ? <p>{say("house.trial_due")}</p> : null}
        </div>
      ) : null}
      <p class="soft">{say("house.backup_means")}</p>
      <details open={copy_due || trial_due}>
        <summary>{say("house.how")}</summary>
        <Steps {...backup} />
      </details>
    </section>
  );
}
