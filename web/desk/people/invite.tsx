// Somebody new: a name, a role, squads; then a link to send, with the words to send it with.
import { useState } from "preact/hooks";
import type { Role, SquadRow } from "../../shared/api.ts";
import { faultWords, type Refusal, type Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { Dialog } from "../shell/dialog.tsx";
import { Field } from "../shell/parts.tsx";
import { mayBeCharged } from "./charges.ts";
import { LinkToSend } from "./link_to_send.tsx";
import { SquadsField } from "./squads_field.tsx";
import { say } from "./words.ts";

const kRoles: Role[] = ["coach", "recorder", "lead", "board", "operator"];

// 'maren.dahl' of 'Maren Dahl': what is easily typed on a phone, and what the server takes.
export function signInFrom(name: string): string {
  const plain = name.normalize("NFKD").replace(/\p{Diacritic}/gu, "").toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, ".").replace(/^\.+|\.+$/g, "").slice(0, 64);
}

interface InviteProps {
  squads: SquadRow[];
  changed: () => unknown;
  onClose: () => void;
}

export function Invite({ squads, changed, onClose }: InviteProps) {
  const [made, setMade] = useState<Said<"add-account"> | undefined>();
  const done = (account: Said<"add-account">) => {
    setMade(account);
    void changed();
  };
  return (
    <Dialog title={say(made ? "invite.made" : "invite.title")} wide onClose={onClose}>
      {made ? <LinkToSend account={made} link={made.link} /> : <InviteForm squads={squads} done={done} />}
    </Dialog>
  );
}

function InviteForm({ squads, done }: { squads: SquadRow[]; done: (account: Said<"add-account">) => void }) {
  const [name, setName] = useState("");
  const [typed, setTyped] = useState<string | undefined>(); // until then it follows the name
  const [role, setRole] = useState<Role>("coach");
  const [chosen, setChosen] = useState<string[]>([]);
  const [refused, setRefused] = useState<Refusal | undefined>();
  const sign_in = typed ?? signInFrom(name);
  const submit = async (event: Event) => {
    event.preventDefault();
    const charges = mayBeCharged(role) ? chosen.map((squad) => ({ squad })) : [];
    const answer = await ask("add-account", {}, { sign_in, name: name.trim(), role, charges });
    if (answer.ok) done(answer.said);
    else setRefused(answer);
  };
  const fault = (field: string): { fault?: string } => {
    if (field === "sign_in" && refused?.refused === "sign-in-taken") return { fault: refused.words };
    const found = refused?.faults.find((one) => one.field === field);
    return found ? { fault: faultWords(found, { at_field: true }) } : {};
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <Field label={say("accounts.name")} hint={say("invite.name_hint")} {...fault("name")}>
        {(given) => <input {...given} value={name} onInput={(event) => setName(event.currentTarget.value)} required autocomplete="off" />}
      </Field>
      <Field label={say("accounts.sign_in")} hint={say("invite.sign_in_hint")} {...fault("sign_in")}>
        {(given) => <input {...given} value={sign_in} onInput={(event) => setTyped(event.currentTarget.value)} required autocomplete="off" autocapitalize="none" spellcheck={false} />}
      </Field>
      <Field label={say("accounts.role")} hint={say(`role_means.${role}`)}>
        {(given) => (
          <select {...given} value={role} onChange={(event) => setRole(event.currentTarget.value as Role)}>
            {kRoles.map((one) => (
              <option key={one} value={one}>
                {say(`role.${one}`)}
              </option>
            ))}
          </select>
        )}
      </Field>
      {mayBeCharged(role) ? <SquadsField squads={squads} chosen={chosen} onChange={setChosen} /> : null}
      {refused && refused.refused !== "sign-in-taken" ? <Refused refusal={refused} /> : null}
      <button type="submit" class="main">
        {say("invite.make")}
      </button>
    </form>
  );
}
