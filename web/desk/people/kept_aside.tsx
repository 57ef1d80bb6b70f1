// What a phone handed in and the books did not take by themselves: why, and the two things that can be done about it.
import { useState } from "preact/hooks";
import type { Account, SquadRow } from "../../shared/api.ts";
import { moment } from "../../shared/words/words.ts";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { Empty, Field, named, Written } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { Sure } from "../shell/sure.tsx";
import { Table } from "../shell/table.tsx";
import { fieldsOf, isKind, kindWords } from "./entry_words.ts";
import { say } from "./words.ts";

type Kept = Said<"quarantine">["kept_aside"][number];
const kWhys = ["entered-anew", "mistake", "not-ours"] as const;

// In words where it reads as an entry; as it came where not.
function Content({ content, squads }: { content: string; squads: SquadRow[] }) {
  let entry: unknown;
  try {
    entry = JSON.parse(content);
  } catch {
    return <Written text={content} />;
  }
  if (typeof entry !== "object" || entry === null || Array.isArray(entry)) return <Written text={content} />;
  const { kind, player, ...rest } = entry as Record<string, unknown>;
  return (
    <>
      <p>
        <strong>{typeof kind === "string" && isKind(kind) ? kindWords(kind) : say("kept.unknown")}</strong>
      </p>
      <ul>
        {typeof player === "string" ? (
          <li>
            {say("field.names")}: <a href={hashOf("people", player)}>{player}</a>
          </li>
        ) : null}
        {fieldsOf(rest as never, squads).map(([key, value]) => (
          <li key={key}>
            {key}: <Written text={value} />
          </li>
        ))}
      </ul>
      <details>
        <summary>{say("kept.as_it_came")}</summary>
        <Written text={content} />
      </details>
    </>
  );
}

export function KeptAsidePart() {
  const asked = useAsked("quarantine", {});
  const accounts = useAsked("accounts", {});
  const squads = useAsked("squads", {});
  const [drops, setDrops] = useState<Kept | undefined>();
  const [why, setWhy] = useState<(typeof kWhys)[number]>("entered-anew");
  const [refused, setRefused] = useState<Record<number, Refusal>>({});
  const name = (account: string): string => named(accounts.said?.accounts.find((one: Account) => one.account === account)?.name ?? account, account);
  const takeIn = async ({ number }: Kept) => {
    const answer = await ask("take-in-kept", { number: String(number) }, {});
    if (!answer.ok) return setRefused({ ...refused, [number]: answer });
    announce(say("kept.taken_in"));
    await asked.again();
  };
  const drop = async () => {
    const answer = await ask("drop-kept", { number: String(drops!.number) }, { why });
    if (!answer.ok) return answer;
    announce(say("kept.dropped"));
    await asked.again();
    return undefined;
  };
  return (
    <>
      <p class="soft">{say("kept.about")}</p>
      <Of asked={asked}>
        {({ kept_aside, looked_at }) => (
          <>
            {kept_aside.length === 0 ? (
              <Empty title={say("kept.none")}>
                <p>{say("kept.none_what")}</p>
              </Empty>
            ) : null}
            {kept_aside.map((one) => (
              <article key={one.number} class="sheet" aria-label={say("kept.number", { number: one.number })}>
                <h2>{say(`kept.key.${one.key}`)}</h2>
                <p class="soft">
                  <bdi>{say("kept.from", { name: name(one.author), when: moment(one.received) })}</bdi>
                </p>
                <Content content={one.content} squads={squads.said?.squads ?? []} />
                {refused[one.number] ? <Refused refusal={refused[one.number]!} /> : null}
                <p class="row">
                  <button type="button" onClick={() => void takeIn(one)}>
                    {say("kept.take_in")}
                  </button>
                  <button type="button" onClick={() => setDrops(one)}>
                    {say("kept.drop")}
                  </button>
                </p>
              </article>
            ))}
            {looked_at.length > 0 ? <Decided decided={looked_at} name={name} /> : null}
          </>
        )}
      </Of>
      {drops ? (
        <Sure title={say("kept.sure")} button={say("kept.drop")} act={drop} onClose={() => setDrops(undefined)}>
          <p>{say("kept.follows")}</p>
          <Field label={say("kept.why")}>
            {(given) => (
              <select {...given} value={why} onChange={(event) => setWhy(event.currentTarget.value as typeof why)}>
                {kWhys.map((one) => (
                  <option key={one} value={one}>
                    {say(`kept.what.${one}`)}
                  </option>
                ))}
              </select>
            )}
          </Field>
        </Sure>
      ) : null}
    </>
  );
}

function Decided({ decided, name }: { decided: Said<"quarantine">["looked_at"]; name: (account: string) => string }) {
  return (
    <section class="sheet">
      <Table
        caption={say("kept.decided")}
        show_caption
        rows={decided}
        rowKey={({ number }) => String(number)}
        columns={[
          { key: "when", heading: say("reads.when"), cell: ({ when }) => moment(when), value: ({ when }) => when },
          { key: "what", heading: say("kept.outcome"), cell: ({ what }) => say(`kept.what.${what}`), value: ({ what }) => what },
          { key: "by", heading: say("reads.who"), cell: ({ by }) => <bdi>{name(by)}</bdi>, value: ({ by }) => name(by) },
        ]}
      />
    </section>
  );
}
