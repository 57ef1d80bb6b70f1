// Coaches go on with their squads, which have other names now: who is charged with one of the season before is charged with what
// became of it, where the lead says so.
import { useState } from "preact/hooks";
import type { Account, Charge } from "../../../shared/api.ts";
import type { Refusal } from "../../api/answer.ts";
import { ask } from "../../api/ask.ts";
import { Of, Refused, useAsked } from "../../api/asked.tsx";
import { list } from "../../../shared/words/words.ts";
import { named } from "../../shell/parts.tsx";
import { undo } from "../../shell/undo.ts";
import type { NextSquad } from "./next_season.ts";
import { say } from "./words.ts";

function chargesNow(charges: Charge[], squads: NextSquad[]): Charge[] {
  const ids = charges.flatMap((charge) => {
    const became = squads.filter(({ was }) => was.includes(charge.squad));
    return became.length === 0 ? [charge] : became.map(({ squad }) => ({ ...charge, squad }));
  });
  return ids.filter((charge, at) => ids.findIndex(({ squad }) => squad === charge.squad) === at);
}

const same = (one: Charge[], other: Charge[]): boolean => JSON.stringify(one) === JSON.stringify(other);

export function CoachesAlong({ squads }: { squads: NextSquad[] }) {
  const accounts = useAsked("accounts", {});
  const [refused, setRefused] = useState<Refusal | undefined>();
  // before: as it was shown; what somebody else changed since is not gone over.
  const charge = async (account: string, charges: Charge[], before: Charge[]): Promise<Refusal | undefined> => {
    const answer = await ask("charge-account", { account }, { charges, before });
    return answer.ok ? undefined : answer;
  };
  const along = async (goes: Account[]) => {
    for (const { account, charges } of goes) {
      const why = await charge(account, chargesNow(charges, squads), charges);
      setRefused(why);
      if (why) return void accounts.again();
    }
    await accounts.again();
    undo.offer({
      words: say("coaches_along"),
      undo: async () => {
        for (const { account, charges } of goes) setRefused(await charge(account, charges, chargesNow(charges, squads)));
        await accounts.again();
      },
    });
  };
  return (
    <section class="sheet" aria-labelledby="coaches-along">
      <h2 id="coaches-along">{say("coaches")}</h2>
      {refused ? <Refused refusal={refused} /> : null}
      <Of asked={accounts} height="table">
        {(said) => {
          const goes = said.accounts.filter(({ ended, charges }) => !ended && !same(charges, chargesNow(charges, squads)));
          if (goes.length === 0) return <p>{say("coaches_none")}</p>;
          const nameOf = (id: string) => squads.find(({ squad }) => squad === id)?.name ?? id;
          return (
            <>
              <ul>
                {goes.map(({ account, name, charges }) => (
                  <li key={account}>
                    <bdi>{say("coach_goes", { name: named(name, account), squads: list(chargesNow(charges, squads).map(({ squad }) => nameOf(squad))) })}</bdi>
                  </li>
                ))}
              </ul>
              <button type="button" class="main" onClick={() => void along(goes)}>
                {say("coaches_do")}
              </button>
            </>
          );
        }}
      </Of>
    </section>
  );
}
