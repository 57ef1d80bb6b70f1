// The other person in a pose: how it stands to the player. Its angles are turned as the player's are.
import type { Partner, View } from "../figure_document.ts";
import { say, wordFor } from "../words.ts";
import { ChoiceField, NumberField } from "./fields.tsx";
import { PostureFields } from "./stands_fields.tsx";

interface PartnerProps {
  path: string;
  view: View;
  partner: Partner | undefined;
  set: (partner: Partner | undefined) => void;
}

export function PartnerFields({ path, view, partner, set }: PartnerProps) {
  if (!partner) {
    return (
      <button type="button" onClick={() => set({ forward: 0.8, contacts: ["feet"], angles: { shoulder: 10 } })}>
        {say("pose.partner_add")}
      </button>
    );
  }
  return (
    <div class="fields">
      <ChoiceField path={`${path}.facing`} label={say("figure.facing")} options={view === "side" ? ["right", "left"] : ["viewer", "away"]} words={(one) => wordFor("facing", one)} none={say("pose.other_way")} />
      <NumberField path={`${path}.forward`} label={say("pose.partner_forward")} least={-2} most={2} step={0.01} optional />
      <NumberField path={`${path}.size`} label={say("pose.partner_size")} least={0.8} most={1.2} step={0.01} optional />
      <PostureFields path={path} view={view} other="other" />
      <p>
        <button type="button" onClick={() => set(undefined)}>
          {say("pose.partner_remove")}
        </button>
      </p>
    </div>
  );
}
