// One account: what it is charged with, a new link, a phone, and its end.
import { useState } from "preact/hooks";
import type { Account, Charge, SquadRow } from "../../shared/api.ts";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { me } from "../api/coming_in.ts";
import { announce } from "../shell/announce.ts";
import { Dialog } from "../shell/dialog.tsx";
import { named } from "../shell/parts.tsx";
import { Sure } from "../shell/sure.tsx";
import { undo } from "../shell/undo.ts";
import { chargesWords, mayBeCharged } from "./charges.ts";
import { LinkToSend } from "./link_to_send.tsx";
import { PairPhone } from "./pair_phone.tsx";
import { SquadsField } from "./squads_field.tsx";
import { say } from "./words.ts";

interface AccountDialogProps {
  account: Account;
  squads: SquadRow[];
  changed: () => unknown;
  onClose: () => void;
}

export function AccountDialog({ account, squads, changed, onClose }: AccountDialogProps) {
  const [shows, setShows] = useState<"all" | "pair" | "end">("all");
  const name = named(account.name, say(`role.${account.role}`));
  if (shows === "end") return <EndAccount account={account} changed={changed} onClose={onClose} />;
  if (shows === "pair") {
    return (
      <Dialog title={say("pair.of", { name })} onClose={onClose}>
        <PairPhone account={account.account} name={name} />
      </Dialog>
    );
  }
  return (
    <Dialog title={name} wide onClose={onClose}>
      <p class="soft">
        <bdi>{say("account.who", { sign_in: named(account.sign_in, "…"), role: say(`role.${account.role}`) })}</bdi>
      </p>
      {account.ended ? <Reopen account={account} changed={changed} name={name} onClose={onClose} /> : null}
      {!account.ended && mayBeCharged(account.role) ? <Charges account={account} squads={squads} changed={changed} name={name} onClose={onClose} /> : null}
      {account.ended ? null : <NewLink account={account} />}
      {!account.ended && mayBeCharged(account.role) ? (
        <section class="sheet">
          <h3>{say("pair.title")}</h3>
          <p>{say("pair.what")}</p>
          <button type="button" onClick={() => setShows("pair")}>
            {say("pair.open")}
          </button>
        </section>
      ) : null}
      {account.ended || account.account === me.value?.account ? null : (
        <section class="sheet">
          <h3>{say("end.title")}</h3>
          <p>{say("end.short")}</p>
          <button type="button" onClick={() => setShows("end")}>
            {say("end.open")}
          </button>
        </section>
      )}
    </Dialog>
  );
}

// Ticked are those without an end; whoever stands in for some days keeps doing so. It closes once it is done, since what can
// be taken back stands below the dialog.
function Charges({ account, squads, changed, name, onClose }: AccountDialogProps & { name: string }) {
  const [chosen, setChosen] = useState(account.charges.filter(({ until }) => until === undefined).map(({ squad }) => squad));
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [shown, setShown] = useState(account.charges);
  const [meanwhile, setMeanwhile] = useState(false);
  // Two leads at once: what is saved goes over what was shown, and over nothing else.
  const set = async (charges: Charge[] | { squad: string }[], before: Charge[]) => {
    const answer = await ask("charge-account", { account: account.account }, { charges, before });
    const others = !answer.ok && answer.refused === "changed-meanwhile";
    setMeanwhile(others);
    setRefused(answer.ok || others ? undefined : answer);
    await changed();
    return answer.ok ? answer.said.charges : undefined;
  };
  const showWhatIsThere = async (): Promise<void> => {
    const answer = await ask("accounts", {});
    const now = answer.ok ? answer.said.accounts.find((one) => one.account === account.account)?.charges : undefined;
    if (now) setShown(now);
  };
  const save = async () => {
    const before = shown;
    const kept = before.filter(({ squad, until }) => until !== undefined || chosen.includes(squad));
    const fresh = chosen.filter((id) => !kept.some(({ squad, until }) => squad === id && until === undefined));
    const now = await set([...kept, ...fresh.map((squad) => ({ squad }))], before);
    if (!now) return showWhatIsThere();
    undo.offer({ words: say("charges.changed", { name, squads: chargesWords(account.role, now, squads) }), undo: async () => ((await set(before, now)) ? undefined : announce(say("charges.not_undone"))) });
    onClose();
  };
  return (
    <section class="sheet">
      <SquadsField squads={squads} chosen={chosen} onChange={setChosen} />
      {shown.some(({ until }) => until !== undefined) ? <p class="soft">{chargesWords(account.role, shown, squads)}</p> : null}
      {meanwhile ? (
        <p class="refused" role="alert">
          {say("charges.meanwhile", { name, squads: chargesWords(account.role, shown, squads) })}
        </p>
      ) : null}
      {refused ? <Refused refusal={refused} /> : null}
      <button type="button" onClick={() => void save()}>
        {say("charges.save")}
      </button>
    </section>
  );
}

// The end of an account is taken back as it was done: with the second factor, and with its phones left out.
function Reopen({ account, changed, name, onClose }: { account: Account; changed: () => unknown; name: string; onClose: () => void }) {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const reopen = async () => {
    const answer = await ask("reopen-account", { account: account.account });
    setRefused(answer.ok ? undefined : answer);
    if (!answer.ok) return;
    announce(say("account.reopened", { name }));
    await changed();
    onClose();
  };
  return (
    <>
      <p>{say("account.ended")}</p>
      <p>{say("account.reopen_what")}</p>
      {refused ? <Refused refusal={refused} /> : null}
      <button type="button" onClick={() => void reopen()}>
        {say("account.reopen")}
      </button>
    </>
  );
}

function NewLink({ account }: { account: Account }) {
  const [link, setLink] = useState<string | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const make = async () => {
    const answer = await ask("account-link", { account: account.account });
    if (answer.ok) setLink(answer.said.link);
    setRefused(answer.ok ? undefined : answer);
  };
  return (
    <section class="sheet">
      <h3>{say("link.title")}</h3>
      {link ? (
        <LinkToSend account={account} link={link} />
      ) : (
        <>
          <p>{say(account.has_password ? "link.lost" : "link.late")}</p>
          <button type="button" onClick={() => void make()}>
            {say("link.make")}
          </button>
        </>
      )}
      {refused ? <Refused refusal={refused} /> : null}
    </section>
  );
}

function EndAccount({ account, changed, onClose }: { account: Account; changed: () => unknown; onClose: () => void }) {
  const end = async () => {
    const answer = await ask("end-account", { account: account.account });
    if (!answer.ok) return answer;
    await changed();
    const back = async () => {
      const again = await ask("reopen-account", { account: account.account });
      announce(again.ok ? say("account.reopened", { name: named(account.name, say(`role.${account.role}`)) }) : again.words);
      await changed();
    };
    undo.offer({ words: say("end.done", { name: named(account.name, say(`role.${account.role}`)) }), undo: back });
    return undefined;
  };
  return (
    <Sure title={say("end.sure", { name: named(account.name, say(`role.${account.role}`)) })} typed={account.sign_in} button={say("end.do")} act={end} onClose={onClose}>
      <p>{say("end.what")}</p>
    </Sure>
  );
}
