// How a pose stands: its moment, what touches the ground, what the hands hold, and how far off a good repetition may be.
import { kSidesOf } from "./joints.ts";
import type { Prop, View } from "../figure_document.ts";
import { say, wordFor } from "../words.ts";
import { ChoiceField, FaultsBelow, NumberField, TextField, TickField, useDraft } from "./fields.tsx";
import { jointAngles } from "./joints.ts";
import { angleName } from "./joint_sliders.tsx";
import { idOfPath, moved, valueAt, withValue } from "./paths.ts";
import { Rows } from "./rows.tsx";

const kContacts = ["feet", "toes", "heels", "knees", "hands", "forearms", "elbows", "shoulders", "hips"];
const kContactOf: Record<string, string> = { feet: "foot", toes: "toes", heels: "heel", knees: "knee", hands: "hand", forearms: "forearm", elbows: "elbow", shoulders: "shoulder", hips: "hip" };
const kMiddleContacts = ["seat", "back", "chest", "head"];
const kSided = ["shoulder", "elbow", "wrist", "hand", "hip", "knee", "ankle", "foot", "toes", "heel"];
const kMiddle = ["head", "neck", "chest", "pelvis"];
const kProps = ["ball", "wall", "cone", "line", "mat", "bench", "band"];

const sided = (view: View, base: string) => kSidesOf[view].map((side) => `${base}_${side}`);

function contactNames(view: View): string[] {
  return [...kContacts.flatMap((both) => [both, ...sided(view, kContactOf[both] ?? both)]), ...kMiddleContacts];
}

export function jointNames(view: View): string[] {
  return [...kMiddle, ...kSided.flatMap((base) => sided(view, base)), "hands", "feet", "knees"];
}

// 'knee_far' in words, and 'other.ankle_near'.
export function placeName(name: string): string {
  const [who, joint] = name.includes(".") ? name.split(".") : [undefined, name];
  const parts = /^(.*)_(near|far|left|right)$/.exec(joint ?? "");
  const words = parts ? say("pose.of_side", { joint: wordFor("body", parts[1] ?? ""), side: wordFor("limb_side", parts[2] ?? "") }) : wordFor("body", joint ?? "");
  return who ? say("pose.of_other", { joint: words }) : words;
}

// Names in an order that counts.
function NamesField({ path, label, hint, options, words, first }: { path: string; label: string; hint?: string; options: string[]; words: (name: string) => string; first?: string }) {
  const draft = useDraft();
  const names = (valueAt(draft.history.value.now, path) as string[] | undefined) ?? [];
  const set = (next: string[]) => draft.change((drill) => withValue(drill, path, next.length > 0 ? next : undefined));
  const id = idOfPath(path);
  return (
    <div class="field names">
      <label for={id}>{label}</label>
      {hint ? <p class="soft">{hint}</p> : null}
      <ul>
        {names.map((name, index) => (
          <li key={name}>
            {words(name)}
            {index === 0 && first && names.length > 1 ? <span class="soft"> {first}</span> : null}
            {index > 0 ? (
              <button type="button" class="quiet" onClick={() => set(moved(names, index, -index))}>
                {say("pose.to_front")}<span class="out-of-sight"> {words(name)}</span>
              </button>
            ) : null}
            <button type="button" class="quiet" onClick={() => set(names.filter((one) => one !== name))}>
              {say("rows.remove")}<span class="out-of-sight"> {words(name)}</span>
            </button>
          </li>
        ))}
      </ul>
      <select id={id} value="" onChange={(event) => event.currentTarget.value && set([...names, event.currentTarget.value])}>
        <option value="">{say("pose.add_one")}</option>
        {options.filter((name) => !names.includes(name)).map((name) => (
          <option key={name} value={name}>
            {words(name)}
          </option>
        ))}
      </select>
      <FaultsBelow path={path} />
    </div>
  );
}

export function PostureFields({ path, view, other }: { path: string; view: View; other: "partner" | "other" | undefined }) {
  const limbs = jointAngles(view).filter(({ limb }) => limb);
  const named = (name: string) => {
    const joint = limbs.find((one) => one.name === name);
    return joint ? angleName(view, joint) : wordFor(view === "side" ? "side_angle" : "front_angle", name);
  };
  const holds = [...jointNames(view), ...(other ? jointNames(view).map((name) => `${other}.${name}`) : [])];
  return (
    <>
      <NamesField path={`${path}.contacts`} label={say("pose.contacts")} hint={say("hint.contacts_order")} options={contactNames(view)} words={placeName} first={say("pose.stays")} />
      {kSidesOf[view].map((side) => (
        <ChoiceField key={side} path={`${path}.hold.hand_${side}`} label={say("pose.hold", { hand: placeName(`hand_${side}`) })} options={holds} words={placeName} none={say("pose.nothing")} />
      ))}
      <NamesField path={`${path}.settle`} label={say("pose.settle")} hint={say("hint.settle")} options={[...new Set(limbs.flatMap(({ base, name }) => [base, name]))]} words={named} />
      <NumberField path={`${path}.lift`} label={say("pose.lift")} hint={say("hint.lift")} least={0} most={0.8} step={0.01} optional />
    </>
  );
}

export function PoseFields({ path, view, partnered, rename }: { path: string; view: View; partnered: boolean; rename: (label: string) => void }) {
  const joints = jointAngles(view);
  const draft = useDraft();
  const tolerances = (valueAt(draft.history.value.now, `${path}.tolerances`) as Record<string, number> | undefined) ?? {};
  const names = Object.keys(tolerances);
  const named = (name: string) => {
    const joint = joints.find((one) => one.name === name);
    return joint ? angleName(view, joint) : wordFor(view === "side" ? "side_angle" : "front_angle", name);
  };
  return (
    <div class="fields">
      <TextField path={`${path}.label`} label={say("pose.label")} typed={rename} />
      <NumberField path={`${path}.at`} label={say("pose.at")} hint={say("hint.at")} least={0} most={1} step={0.05} optional />
      <PostureFields path={path} view={view} other={partnered ? "partner" : undefined} />
      <NumberField path={`${path}.shift`} label={say("pose.shift")} hint={say("hint.shift")} least={-2} most={2} step={0.01} optional />
      <NumberField path={`${path}.tolerance_degrees`} label={say("pose.tolerance")} hint={say("hint.tolerance")} least={3} most={45} optional />
      {names.map((name) => (
        <NumberField key={name} path={`${path}.tolerances.${name}`} label={say("pose.tolerance_of", { joint: named(name) })} least={3} most={45} optional />
      ))}
      <NamesAdd label={say("pose.tolerance_add")} options={joints.map(({ name }) => name).filter((name) => !names.includes(name))} words={named} add={(name) => draft.change((drill) => withValue(drill, `${path}.tolerances.${name}`, 10))} />
      <TickField path={`${path}.eyes_closed`} label={say("pose.eyes_closed")} />
      <PropRows path={`${path}.props`} view={view} title={say("pose.props")} />
    </div>
  );
}

function NamesAdd({ label, options, words, add }: { label: string; options: string[]; words: (name: string) => string; add: (name: string) => void }) {
  return (
    <label class="field">
      {label}
      <select value="" onChange={(event) => event.currentTarget.value && add(event.currentTarget.value)}>
        <option value="">{say("pose.add_one")}</option>
        {options.map((name) => (
          <option key={name} value={name}>
            {words(name)}
          </option>
        ))}
      </select>
    </label>
  );
}

export function PropRows({ path, view, title }: { path: string; view: View; title: string }) {
  const draft = useDraft();
  return (
    <Rows<Prop> path={path} title={title} named={({ kind }) => wordFor("prop", kind)} least={0} most={6} fresh={() => ({ kind: "cone", forward: 0.5 })} add={say("add_prop")} compact>
      {(row) => {
        const prop = valueAt(draft.history.value.now, row) as Prop;
        const kind = (to: string) => draft.change((drill) => withValue(drill, row, to === "band" ? { kind: to, from: sided(view, "hand")[0], to: sided(view, "hand")[1] } : { kind: to, ...(prop.at ? { at: prop.at } : to === "mat" ? {} : { forward: prop.forward ?? 0 }) }));
        return (
          <>
            <ChoiceField path={`${row}.kind`} label={say("pose.prop")} options={kProps} words={(one) => wordFor("prop", one)} chosen={kind} />
            {prop.kind === "band" ? (
              <>
                <ChoiceField path={`${row}.from`} label={say("pose.band_from")} options={jointNames(view)} words={placeName} />
                <ChoiceField path={`${row}.to`} label={say("pose.band_to")} options={jointNames(view)} words={placeName} />
              </>
            ) : (
              <>
                <ChoiceField path={`${row}.at`} label={say("pose.prop_at")} options={jointNames(view)} words={placeName} none={say("pose.on_ground")} />
                <NumberField path={`${row}.forward`} label={say("pose.prop_forward")} least={-2} most={2} step={0.01} optional />
              </>
            )}
            {prop.kind === "bench" ? <NumberField path={`${row}.height`} label={say("pose.prop_height")} least={0.03} most={0.8} step={0.01} optional /> : null}
          </>
        );
      }}
    </Rows>
  );
}
