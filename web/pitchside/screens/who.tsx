// Names on the phone of whoever may see them: while the lease lasts; a shirt or nothing after that.
import { kPlaces, type Place } from "../evening/sore.ts";
import { say } from "../words/words.ts";
import { Toggle } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";

export function whoIs(pitch: Pitch, player: string): string {
  const listed = pitch.pack.roster.find((each) => each.player === player);
  if (!listed) return player;
  if (!pitch.names_shown.value) return listed.shirt ? `#${listed.shirt}` : player;
  return listed.shirt ? `${listed.shirt} ${listed.name}` : listed.name;
}

interface WhoProps {
  pitch: Pitch;
  label: string;
  player: string;
  onPick(player: string): void;
}

// Once somebody is picked the others make room for the next question; a second tap brings them back.
export function WhoPicker({ pitch, label, player, onPick }: WhoProps) {
  const picked = pitch.pack.roster.filter((each) => each.player === player);
  const shown = picked.length > 0 ? picked : pitch.pack.roster;
  return (
    <div class="ticks names" role="group" aria-label={label}>
      {shown.map((each) => (
        <Toggle
          key={each.player}
          label={whoIs(pitch, each.player)}
          on={player === each.player}
          onChange={(on) => onPick(on ? each.player : "")}
        />
      ))}
    </div>
  );
}

interface PlaceProps {
  label: string;
  place: Place | "";
  onPick(place: Place | ""): void;
}

export function PlacePicker({ label, place, onPick }: PlaceProps) {
  return (
    <div class="row" role="group" aria-label={label}>
      {kPlaces.map((each) => (
        <Toggle key={each} label={say(`place.${each}`)} on={place === each} onChange={() => onPick(each)} />
      ))}
      <Toggle label={say("hurt.not_known")} on={place === ""} onChange={() => onPick("")} />
    </div>
  );
}
