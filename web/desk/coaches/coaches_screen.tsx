// Coaches: who has which squads, whether a phone of theirs is paired, and when it was last heard of.
import type { Account, Device } from "../../shared/api.ts";
import { moment } from "../../shared/words/words.ts";
import { Of, useAsked } from "../api/asked.tsx";
import { chargesWords } from "../people/charges.ts";
import { Empty, Head, named } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { type Column, Table } from "../shell/table.tsx";
import { many, say } from "./words.ts";

interface Coach {
  account: Account;
  devices: Device[]; // that are still part of the club
  heard?: string; // from the one last heard of
}

function coachesOf(accounts: Account[], devices: Device[]): Coach[] {
  return accounts
    .filter(({ role, ended }) => role === "coach" && !ended)
    .map((account) => {
      const own = devices.filter((device) => device.account === account.account && !device.revoked);
      const heard = own.flatMap(({ seen }) => seen ?? []).sort().at(-1);
      return { account, devices: own, ...(heard ? { heard } : {}) };
    });
}

export function Screen() {
  const accounts = useAsked("accounts", {});
  const devices = useAsked("devices", {});
  const squads = useAsked("squads", {});
  const columns: Column<Coach>[] = [
    { key: "name", heading: say("name"), names: true, cell: ({ account }) => <bdi>{named(account.name, say("a_coach"))}</bdi>, value: ({ account }) => account.name },
    { key: "squads", heading: say("squads"), cell: ({ account }) => chargesWords("coach", account.charges, squads.said?.squads ?? []) },
    { key: "phones", heading: say("phones"), cell: (coach) => (coach.devices.length === 0 ? say("no_phone") : many("phones", coach.devices.length)), value: (coach) => coach.devices.length },
    { key: "heard", heading: say("heard"), cell: ({ heard }) => (heard ? moment(heard) : say("never")), value: ({ heard }) => heard ?? "" },
  ];
  return (
    <>
      <Head title={say("title")}>
        <p>{say("what")}</p>
      </Head>
      <Of asked={accounts}>
        {(said) => {
          const coaches = coachesOf(said.accounts, devices.said?.devices ?? []);
          if (coaches.length > 0) return <Table caption={say("title")} columns={columns} rows={coaches} rowKey={({ account }) => account.account} />;
          return (
            <Empty title={say("none.title")}>
              <p>{say("none.what")}</p>
              <a href={hashOf("people")}>{say("none.step")}</a>
            </Empty>
          );
        }}
      </Of>
    </>
  );
}
