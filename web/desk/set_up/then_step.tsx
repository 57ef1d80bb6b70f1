// What comes when the club stands: plans and the first cards, coaches and their phones.
import { unsaved } from "./club_draft.ts";
import { FirstCards } from "./first_cards.tsx";
import { InviteCoaches } from "./invite_coaches.tsx";
import { say } from "./words.ts";

export function ThenStep() {
  if (unsaved.value.length > 0) return <p>{say("then.save_first")}</p>;
  return (
    <>
      <p>{say("then.what")}</p>
      <FirstCards />
      <InviteCoaches />
    </>
  );
}
