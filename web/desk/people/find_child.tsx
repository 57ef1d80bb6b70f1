// The way to one child: by the squad, whose list is opened by a click and written into the book of reads, or by the id.
import { useState } from "preact/hooks";
import { Of, useAsked } from "../api/asked.tsx";
import { Field } from "../shell/parts.tsx";
import { go, hashOf } from "../shell/route.ts";
import { Table } from "../shell/table.tsx";
import { ByName } from "./by_name.tsx";
import { nameOf } from "./charges.ts";
import { childId, childName } from "./child_columns.tsx";
import { ageGroupWords } from "./entry_words.ts";
import type { PartProps } from "./people_screen.tsx";
import { say } from "./words.ts";

const kId = /^[A-Za-z0-9_-][\w.-]{0,63}$/;

export function FindChild({ further }: PartProps) {
  const squads = useAsked("squads", {});
  const squad = further.squad ?? "";
  const open = (id: string) => go(hashOf("people", undefined, { part: "child", ...(id ? { squad: id } : {}) }));
  return (
    <>
      <p>{say("find.what")}</p>
      <ByName squads={squads.said?.squads ?? []} />
      <div class="row top">
        <Of asked={squads} height="line">
          {(said) => (
            <Field label={say("find.squad")}>
              {(given) => (
                <select {...given} value={squad} onChange={(event) => open(event.currentTarget.value)}>
                  <option value="">{say("find.choose")}</option>
                  {said.squads.map(({ id, name }) => (
                    <option key={id} value={id}>
                      {name}
                    </option>
                  ))}
                </select>
              )}
            </Field>
          )}
        </Of>
        <ById />
      </div>
      {squad ? <Roster key={squad} squad={squad} title={nameOf(squads.said?.squads ?? [], squad)} /> : null}
    </>
  );
}

function ById() {
  const [id, setId] = useState("");
  const [wrong, setWrong] = useState(false);
  const submit = (event: Event) => {
    event.preventDefault();
    const fits = kId.test(id.trim());
    setWrong(!fits);
    if (fits) go(hashOf("people", id.trim()));
  };
  return (
    <form onSubmit={submit}>
      <Field label={say("find.id")} {...(wrong ? { fault: say("find.no_id") } : {})}>
        {(given) => <input {...given} value={id} onInput={(event) => setId(event.currentTarget.value)} autocomplete="off" spellcheck={false} />}
      </Field>
      <button type="submit">{say("find.open")}</button>
    </form>
  );
}

function Roster({ squad, title }: { squad: string; title: string }) {
  const asked = useAsked("squad", { squad });
  return (
    <Of asked={asked}>
      {({ roster }) => (
        <Table
          caption={title}
          show_caption
          rows={roster}
          rowKey={({ player }) => player}
          columns={[
            childName(),
            { key: "age_group", heading: say("child.age_group"), cell: ({ age_group }) => ageGroupWords(age_group), value: ({ age_group }) => age_group },
            childId(),
          ]}
        />
      )}
    </Of>
  );
}
