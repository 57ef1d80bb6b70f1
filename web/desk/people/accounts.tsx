// Who may come in: each account with its role and what it is charged with.
import type { Account, SquadRow } from "../../shared/api.ts";
import { named } from "../shell/parts.tsx";
import { type Column, Table } from "../shell/table.tsx";
import { chargesWords } from "./charges.ts";
import { say } from "./words.ts";

// How far somebody has come: an account without a password waits for its link to be used.
function standing({ ended, has_password, has_second_factor, role }: Account): string {
  if (ended) return say("accounts.ended");
  if (!has_password) return say("accounts.link_waits");
  if (!has_second_factor && role !== "coach" && role !== "recorder") return say("accounts.second_waits");
  return say("accounts.comes_in");
}

export function Accounts({ accounts, squads }: { accounts: Account[]; squads: SquadRow[] }) {
  const columns: Column<Account>[] = [
    { key: "name", heading: say("accounts.name"), names: true, cell: ({ name, role }) => <bdi>{named(name, say(`role.${role}`))}</bdi>, value: ({ name }) => name },
    { key: "sign_in", heading: say("accounts.sign_in"), cell: ({ sign_in }) => <bdi>{named(sign_in, "…")}</bdi>, value: ({ sign_in }) => sign_in },
    { key: "role", heading: say("accounts.role"), cell: ({ role }) => say(`role.${role}`), value: ({ role }) => say(`role.${role}`) },
    { key: "charges", heading: say("accounts.charges"), cell: ({ charges, role }) => (role === "lead" ? say("charges.all") : chargesWords(charges, squads)) },
    { key: "standing", heading: say("accounts.standing"), cell: standing, value: standing },
  ];
  return <Table caption={say("accounts.title")} columns={columns} rows={accounts} rowKey={({ account }) => account} />;
}
