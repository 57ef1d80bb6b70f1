// People and privacy: who may come in, and what is known of whom.
import { Of, useAsked } from "../api/asked.tsx";
import { Head } from "../shell/parts.tsx";
import { Accounts } from "./accounts.tsx";
import { say } from "./words.ts";

export function Screen() {
  const accounts = useAsked("accounts", {});
  const squads = useAsked("squads", {});
  return (
    <>
      <Head title={say("title")} />
      <Of asked={accounts}>{(said) => <Accounts accounts={said.accounts} squads={squads.said?.squads ?? []} />}</Of>
    </>
  );
}
