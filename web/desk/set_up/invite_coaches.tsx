// Coaches, invited from here: a name and squads, then a link as a picture for the phone's camera, and as a message to send.
// Who was invited in this page stands below, each with the way to pair the phone.
import { useState } from "preact/hooks";
import type { Account } from "../../shared/api.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { chargesWords } from "../people/charges.ts";
import { Invite } from "../people/invite.tsx";
import { PairPhone } from "../people/pair_phone.tsx";
import { Dialog } from "../shell/dialog.tsx";
import { named } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { say } from "./words.ts";

export function InviteCoaches() {
  const accounts = useAsked("accounts", {});
  const squads = useAsked("squads", {});
  const [invites, setInvites] = useState(false);
  const [pairs, setPairs] = useState<Account | undefined>();
  const rows = squads.said?.squads ?? [];
  return (
    <section class="sheet" aria-labelledby="invite-coaches">
      <h2 id="invite-coaches">{say("then.coaches")}</h2>
      <p>{say("then.coaches_what")}</p>
      <p class="row">
        <button type="button" onClick={() => setInvites(true)}>
          {say("then.invite")}
        </button>
        <a href={hashOf("people")}>{say("then.people")}</a>
      </p>
      <Of asked={accounts} height="line">
        {(said) => {
          const coaches = said.accounts.filter(({ role, ended }) => role === "coach" && !ended);
          if (coaches.length === 0) return <p class="soft">{say("then.no_coaches")}</p>;
          return (
            <ul class="coaches-there">
              {coaches.map((coach) => (
                <li key={coach.account} class="row">
                  <span>
                    <bdi>{named(coach.name, coach.account)}</bdi>: <bdi>{chargesWords(coach.role, coach.charges, rows)}</bdi>.{" "}
                    <span class="soft">{say(coach.has_password ? "then.has_come" : "then.link_waits")}</span>
                  </span>
                  <button type="button" aria-label={say("then.pair_of", { name: named(coach.name, coach.account) })} onClick={() => setPairs(coach)}>
                    {say("then.pair")}
                  </button>
                </li>
              ))}
            </ul>
          );
        }}
      </Of>
      {invites ? <Invite squads={rows} changed={accounts.again} onClose={() => setInvites(false)} /> : null}
      {pairs ? (
        <Dialog title={say("then.pair_of", { name: named(pairs.name, pairs.account) })} wide onClose={() => setPairs(undefined)}>
          <PairPhone account={pairs.account} name={named(pairs.name, pairs.account)} />
        </Dialog>
      ) : null}
    </section>
  );
}
