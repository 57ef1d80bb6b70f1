// Who may come in: each account with its role and what it is charged with; a row is opened by its name.
import { useState } from "preact/hooks";
import type { Account, SquadRow } from "../../shared/api.ts";
import { Of, together, useAsked } from "../api/asked.tsx";
import { Empty, named } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { type Column, Table } from "../shell/table.tsx";
import { AccountDialog } from "./account_dialog.tsx";
import { chargesWords } from "./charges.ts";
import { Invite } from "./invite.tsx";
import type { PartProps } from "./people_screen.tsx";
import { say } from "./words.ts";

// How far somebody has come: an account without a password waits for its link to be used.
function standing({ ended, has_password, has_second_factor, role }: Account): string {
  if (ended) return say("accounts.ended");
  if (!has_password) return say("accounts.link_waits");
  if (!has_second_factor && role !== "coach" && role !== "recorder") return say("accounts.second_waits");
  return say("accounts.comes_in");
}

function columnsOf(squads: SquadRow[]): Column<Account>[] {
  return [
    {
      key: "name", heading: say("accounts.name"), names: true, value: ({ name }) => name,
      cell: ({ account, name, role }) => (
        <a href={hashOf("people", undefined, { account })}>
          <bdi>{named(name, say(`role.${role}`))}</bdi>
        </a>
      ),
    },
    { key: "sign_in", heading: say("accounts.sign_in"), cell: ({ sign_in }) => <bdi>{named(sign_in, "…")}</bdi>, value: ({ sign_in }) => sign_in },
    { key: "role", heading: say("accounts.role"), cell: ({ role }) => say(`role.${role}`), value: ({ role }) => say(`role.${role}`) },
    { key: "charges", heading: say("accounts.charges"), cell: ({ charges, role }) => chargesWords(role, charges, squads) },
    { key: "standing", heading: say("accounts.standing"), cell: standing, value: standing },
  ];
}

export function AccountsPart({ further }: PartProps) {
  const accounts = useAsked("accounts", {});
  const squads = useAsked("squads", {});
  const [invites, setInvites] = useState(false);
  const close = () => go(hashOf("people"));
  const rows = squads.said?.squads ?? [];
  return (
    <>
      <p class="row">
        <button type="button" class="main" onClick={() => setInvites(true)}>
          {say("invite.title")}
        </button>
        <span class="soft">{say("accounts.how")}</span>
      </p>
      <Of asked={together(accounts, [squads])}>
        {(said) => {
          const open = said.accounts.find(({ account }) => account === further.account);
          return (
            <>
              <Table caption={say("part.accounts")} columns={columnsOf(rows)} rows={said.accounts} rowKey={({ account }) => account} />
              {said.accounts.length === 1 ? (
                <Empty title={say("accounts.alone")}>
                  <p>{say("accounts.alone_what")}</p>
                </Empty>
              ) : null}
              {open ? <AccountDialog key={open.account} account={open} squads={rows} changed={() => accounts.again()} onClose={close} /> : null}
            </>
          );
        }}
      </Of>
      {invites ? <Invite squads={rows} changed={() => accounts.again()} onClose={() => setInvites(false)} /> : null}
    </>
  );
}
