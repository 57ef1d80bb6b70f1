// What the checker says of the drill, line by line; each line leads to its field.
import { many, say } from "../words.ts";
import type { Draft } from "./draft.ts";
import { faultWords } from "./fields.tsx";

export function Verdict({ draft, show }: { draft: Draft; show: (field: string) => void }) {
  const faults = draft.faults.value;
  return (
    <section class="verdict" aria-live="polite" aria-busy={draft.checking.value}>
      <h2>{say("verdict.title")}</h2>
      {faults === undefined ? <p class="soft">{say("verdict.checking")}</p> : null}
      {faults?.length === 0 ? <p>{say("verdict.sound")}</p> : null}
      {faults && faults.length > 0 ? (
        <>
          <p>{many("faults", faults.length)}</p>
          <ul>
            {faults.map((fault) => (
              <li key={`${fault.file} ${fault.field} ${fault.found}`}>
                <button type="button" class="quiet" onClick={() => show(fault.field)}>
                  <bdi>{fault.field}</bdi>
                </button>{" "}
                {faultWords(fault)}
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}
