// Every angle of a pose as a slider with its name and degrees: arrow keys turn by a degree, page keys by five.
import type { Angles, View } from "../figure_document.ts";
import { say, wordFor } from "../words.ts";
import { FaultsBelow } from "./fields.tsx";
import { angleOf, jointAngles, writtenAngle, type JointAngle } from "./joints.ts";

interface SlidersProps {
  view: View;
  angles: Angles | undefined;
  picked: string | undefined;
  path: string; // of the pose, for faults that lead here
  held: string[]; // sides whose arm is set by what the hand holds
  contacts: string[]; // a foot on its sole and a hand on its palm lie flat where nothing is written
  onPick: (angle: string) => void;
  onTurn: (joint: JointAngle, degrees: number | undefined) => void;
  onSettle: () => void;
}

type Group = "middle" | "arms" | "legs";
const kArm = ["shoulder", "shoulder_out", "shoulder_flex", "elbow", "elbow_flex", "wrist"];
const groupOf = ({ limb, base }: JointAngle): Group => (!limb ? "middle" : kArm.includes(base) ? "arms" : "legs");
const kFlat: Record<string, string[]> = { ankle: ["foot", "feet"], wrist: ["hand", "hands", "forearm", "forearms"] };

function liesFlat({ base, side }: JointAngle, contacts: string[]): boolean {
  return (kFlat[base] ?? []).some((part) => contacts.includes(part) || contacts.includes(`${part}_${side}`));
}

export function degreesInWords(view: View, base: string, degrees: number): string {
  if (degrees === 0) return say("pose.straight");
  const way = wordFor(degrees > 0 ? (view === "side" ? "side_plus" : "front_plus") : view === "side" ? "side_minus" : "front_minus", base);
  return say("pose.degrees", { degrees: Math.abs(Math.round(degrees)), way });
}

export const angleName = (view: View, { base, side }: Pick<JointAngle, "base" | "side">): string => {
  const named = wordFor(view === "side" ? "side_angle" : "front_angle", base);
  return side ? say("pose.of_side", { joint: named, side: wordFor("limb_side", side) }) : named;
};

export function JointSliders({ view, angles, picked, path, held, contacts, onPick, onTurn, onSettle }: SlidersProps) {
  const joints = jointAngles(view);
  const key = (event: KeyboardEvent, joint: JointAngle) => {
    const by = { PageUp: 5, PageDown: -5 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    onTurn(joint, angleOf(angles, joint) + by);
  };
  const slider = (joint: JointAngle) => {
    const id = `joint-${path.replaceAll(".", "-")}-${joint.name}`;
    const written = writtenAngle(angles, joint);
    const set_by_hold = joint.side !== undefined && held.includes(joint.side) && ["shoulder", "elbow"].includes(joint.base);
    const words = set_by_hold ? say("pose.by_hold") : written === undefined && liesFlat(joint, contacts) ? say("pose.by_ground") : degreesInWords(view, joint.base, written ?? 0);
    return (
      <div key={joint.name} class={`joint${joint.name === picked ? " picked" : ""}`} data-field={`${path}.angles.${joint.name}`}>
        <label for={id}>{angleName(view, joint)}</label>
        <input id={id} type="range" min={joint.least} max={joint.most} step={1} value={written ?? 0} aria-valuetext={words} onFocus={() => onPick(joint.name)} onKeyDown={(event) => key(event, joint)}
          onInput={(event) => onTurn(joint, Number(event.currentTarget.value))} onBlur={onSettle} onPointerUp={onSettle} />
        <output for={id} aria-hidden="true">
          {words}
        </output>
        {liesFlat(joint, contacts) && written !== undefined ? (
          <button type="button" class="quiet" onClick={() => onTurn(joint, undefined)}>
            {say("pose.let_ground")}<span class="out-of-sight"> ({angleName(view, joint)})</span>
          </button>
        ) : null}
        <FaultsBelow path={`${path}.angles.${joint.name}`} />
      </div>
    );
  };
  return (
    <div class="joints">
      {(["middle", "arms", "legs"] as const).map((group) => (
        <fieldset key={group}>
          <legend>{say(`pose.${group}`)}</legend>
          {joints.filter((joint) => groupOf(joint) === group).map(slider)}
        </fieldset>
      ))}
    </div>
  );
}
