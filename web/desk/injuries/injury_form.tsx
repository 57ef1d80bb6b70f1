// A new injury, or what was entered of one put right. Two things are entered of a new one: the record, which waits for the
// family's consent, and that the player is hurt, which never waits and holds back at once.
import { useState } from "preact/hooks";
import type { Refusal } from "../api/answer.ts";
import { Refused } from "../api/asked.tsx";
import { enter, newEntry } from "../api/enter.ts";
import { Field } from "../shell/parts.tsx";
import { placeOf } from "./body_regions.ts";
import type { Chosen } from "./body_map.tsx";
import { HowFields } from "./how_fields.tsx";
import type { Injury } from "./injury.ts";
import { PersonFields } from "./person_fields.tsx";
import { type Terms, termsOf, whatOf } from "./terms.ts";
import { WhereField } from "./where_field.tsx";
import { say } from "./words.ts";

interface FormProps {
  today: string;
  before?: Injury; // what is put right
  entered: (done: { id: string; hurt: boolean; kept: boolean }) => void;
}

// What stands besides, where the record was not kept.
function toldOf(refusal: Refusal, hurt: boolean): Refusal {
  const about = refusal.refused === "no-consent" ? say("told.no_consent") : refusal.words;
  return { ...refusal, words: hurt ? `${about} ${say("told.hurt_stands")}` : about };
}

export function InjuryForm({ today, before, entered }: FormProps) {
  const was = termsOf(before?.what ?? []);
  const [{ squad, player }, setPerson] = useState({ squad: before?.squad ?? "", player: before?.player ?? "" });
  const [chosen, setChosen] = useState<Chosen | undefined>(was.region ? { region: was.region, side: was.side ?? "" } : undefined);
  const [terms, setTerms] = useState<Terms>(was);
  const [day, setDay] = useState(before?.day ?? today);
  const [note, setNote] = useState(before?.note ?? "");
  const [holds, setHolds] = useState(before === undefined);
  const [tried, setTried] = useState(false);
  const [sends, setSends] = useState(false);
  const [hurt, setHurt] = useState(false); // was taken in
  const [refused, setRefused] = useState<Refusal | undefined>();
  const submit = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (player === "" || chosen === undefined || sends) return;
    setSends(true);
    let is_hurt = hurt;
    if (holds && !is_hurt) {
      const place = placeOf(chosen.region, chosen.face);
      const not_taken = await enter([newEntry("hurt", { player, ...(place ? { place } : {}) })]);
      if (not_taken) {
        setSends(false);
        return setRefused(not_taken);
      }
      is_hurt = true;
      setHurt(true);
    }
    const { region: _, side: __, ...others } = terms;
    const what = whatOf({ ...others, region: chosen.region, ...(chosen.side ? { side: chosen.side } : {}) });
    const opened = newEntry("injury-opened", { player, squad, day, what, ...(note.trim() ? { note: note.trim() } : {}), ...(before ? { corrects: before.injury } : {}) });
    const why = await enter([opened]);
    setSends(false);
    setRefused(why ? toldOf(why, is_hurt) : undefined);
    if (!why) entered({ id: before?.injury ?? opened.id, hurt: is_hurt, kept: true });
  };
  return (
    <form class="injury-form" onSubmit={(event) => void submit(event)} noValidate>
      {before ? null : <PersonFields squad={squad} player={player} change={(to_squad, to_player) => setPerson({ squad: to_squad, player: to_player })} {...(tried && player === "" ? { fault: say("form.choose_player") } : {})} />}
      {tried && squad === "" ? <p class="fault">{say("form.choose_player")}</p> : null}
      <Field label={say("form.day")}>{(given) => <input {...given} type="date" required max={today} value={day} onInput={(event) => setDay(event.currentTarget.value)} />}</Field>
      <WhereField chosen={chosen} choose={setChosen} {...(tried && !chosen ? { fault: say("form.choose_region") } : {})} />
      <details class="more" open={before !== undefined}>
        <summary>{say("form.more")}</summary>
        <HowFields terms={terms} change={setTerms} />
        <Field label={say("form.note")} hint={say("form.note_hint")}>
          {(given) => <input {...given} maxLength={500} value={note} onInput={(event) => setNote(event.currentTarget.value)} autocomplete="off" />}
        </Field>
      </details>
      {before ? null : (
        <label class="tick">
          <input type="checkbox" checked={holds} onChange={(event) => setHolds(event.currentTarget.checked)} />
          {say("form.holds")}
        </label>
      )}
      {refused ? <Refused refusal={refused} /> : null}
      <button type="submit" class="main" aria-disabled={sends}>
        {say(before ? "form.put_right" : "form.enter")}
      </button>
    </form>
  );
}
