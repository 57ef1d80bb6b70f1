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

export function WhoPicker({ pitch, label, player, onPick }: WhoProps) {
  return (
    <div class="ticks" role="group" aria-label={label}>
      {pitch.pack.roster.map((each) => (
        <Toggle
          key={each.player}
          label={whoIs(pitch, each.player)}
          on={player === each.player}
          onChange={() => onPick(each.player)}
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
