// One's own account: the password, the second factor, and where one is signed in.
import { useRef, useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Of, Refused, useAsked } from "../api/asked.tsx";
import { me, showCode } from "../api/coming_in.ts";
import { moment } from "../../shared/words/words.ts";
import { announce } from "./announce.ts";
import { Dialog } from "./dialog.tsx";
import { Field, Head, named } from "./parts.tsx";
import { SecondFactor } from "./second_factor.tsx";
import { Table } from "./table.tsx";
import { many, say } from "./words.ts";

export function Screen() {
  const who = me.value!;
  return (
    <>
      <Head title={say("account.title")}>
        <p>
          <bdi>{say("account.who", { name: named(who.name, "…"), sign_in: named(who.sign_in, "…") })}</bdi> {say("account.ends", { when: moment(who.ends_at) })}
        </p>
      </Head>
      <PasswordForm />
      <SecondFactorPart />
      <Sessions />
    </>
  );
}

function PasswordForm() {
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [changed, setChanged] = useState<string | undefined>();
  const form = useRef<HTMLFormElement>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    const typed = new FormData(form.current!);
    const answer = await ask("password", {}, { old: String(typed.get("old")), new: String(typed.get("new")) });
    setRefused(answer.ok ? undefined : answer);
    setChanged(answer.ok ? say("account.changed", { ended: many("ended", answer.said.ended) }) : undefined);
    if (answer.ok) form.current?.reset();
  };
  const at = (key: string) => (refused && (refused.refused === "old-password-wrong") === (key === "old") ? { fault: refused.words } : {});
  return (
    <form ref={form} class="sheet" onSubmit={(event) => void submit(event)}>
      <h2>{say("account.password")}</h2>
      <input class="out-of-sight" name="username" autocomplete="username" value={me.value?.sign_in} readOnly tabIndex={-1} aria-hidden="true" />
      <Field label={say("account.old")} {...at("old")}>
        {(given) => <input {...given} name="old" type="password" autocomplete="current-password" required />}
      </Field>
      <Field label={say("account.new")} hint={say("activate.long")} {...at("new")}>
        {(given) => <input {...given} name="new" type="password" autocomplete="new-password" required />}
      </Field>
      <button type="submit">{say("account.change")}</button>
      {changed ? <p role="status">{changed}</p> : null}
    </form>
  );
}

function SecondFactorPart() {
  const [opened, setOpened] = useState(false);
  const there = me.value?.has_second_factor ?? false;
  // One that is there is replaced only by whoever has just shown it.
  const open = async () => setOpened(!there || (await showCode()));
  const done = async () => {
    setOpened(false);
    const answer = await ask("me", {});
    if (answer.ok) me.value = answer.said;
  };
  return (
    <section class="sheet">
      <h2>{say("account.second")}</h2>
      <p>{say(there ? "account.second_there" : "account.second_none")}</p>
      <button type="button" onClick={() => void open()}>
        {say(there ? "account.second_new" : "account.second_first")}
      </button>
      {opened ? (
        <Dialog title={say("account.second")} onClose={() => setOpened(false)}>
          <SecondFactor titled="second-title" done={() => void done()} />
        </Dialog>
      ) : null}
    </section>
  );
}

function Sessions() {
  const asked = useAsked("sessions", {});
  const [refused, setRefused] = useState<Refusal | undefined>();
  const end = async () => {
    const answer = await ask("end-other-sessions", {});
    setRefused(answer.ok ? undefined : answer);
    if (answer.ok) announce(many("ended", answer.said.ended));
    await asked.again();
  };
  return (
    <section class="sheet">
      <h2>{say("account.sessions")}</h2>
      <Of asked={asked} height="table">
        {({ sessions }) => (
          <>
            <Table
              caption={say("account.sessions")}
              rows={sessions}
              rowKey={({ began }) => began}
              columns={[
                { key: "began", heading: say("account.began"), cell: ({ began, this_one }) => `${moment(began)}${this_one ? ` (${say("account.this_one")})` : ""}`, value: ({ began }) => began },
                { key: "seen", heading: say("account.seen"), cell: ({ seen }) => moment(seen), value: ({ seen }) => seen },
              ]}
            />
            {sessions.length > 1 ? (
              <button type="button" onClick={() => void end()}>
                {say("account.end_others")}
              </button>
            ) : null}
          </>
        )}
      </Of>
      {refused ? <Refused refusal={refused} /> : null}
    </section>
  );
}
