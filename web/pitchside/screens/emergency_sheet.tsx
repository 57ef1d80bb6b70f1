// Whom to call at home, one player at a time, where the family agreed to have it on a phone. Each opening is entered; it is
// gone with the lease and while the app is locked, like every name.
import { useState } from "preact/hooks";
import type { EmergencySheet } from "../package/evening_package.ts";
import { say, type Key } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";
import { Toggle } from "./parts.tsx";
import { whoIs } from "./who.tsx";

const kLines: [Key, "allergy" | "inhaler" | "other"][] = [
  ["sheet.allergy", "allergy"],
  ["sheet.inhaler", "inhaler"],
  ["sheet.other", "other"],
];

function Sheet({ sheet }: { sheet: EmergencySheet }) {
  return (
    <>
      <a class="button main-call" href={`tel:${sheet.phone.replace(/[^0-9+*#]/g, "")}`}>
        {say("sheet.call", { guardian: sheet.guardian, number: sheet.phone })}
      </a>
      <dl class="venue">
        {kLines.map(([key, part]) => (
          <div key={part}>
            <dt>{say(key)}</dt>
            <dd>{sheet[part] ?? say("sheet.not_stated")}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

export function EmergencySheets({ pitch }: { pitch: Pitch }) {
  const [player, setPlayer] = useState("");
  const sheets = pitch.names_shown.value ? (pitch.pack.emergency ?? []) : [];
  const sheet = sheets.find((each) => each.player === player);
  const pick = (picked: string) => {
    setPlayer(picked);
    if (picked) pitch.happen({ event: "sheet-opened", player: picked });
  };
  if (sheets.length === 0) {
    return (
      <p>
        <strong>{say("hurt.sheet")}</strong>
      </p>
    );
  }
  return (
    <details onToggle={(event) => !event.currentTarget.open && setPlayer("")}>
      <summary>{say("sheet.title")}</summary>
      <div class="inside">
        <p>{say("sheet.noted")}</p>
        <div class="ticks names" role="group" aria-label={say("sheet.title")}>
          {sheets
            .filter((each) => player === "" || each.player === player)
            .map((each) => (
              <Toggle key={each.player} label={whoIs(pitch, each.player)} on={each.player === player} onChange={(on) => pick(on ? each.player : "")} />
            ))}
        </div>
        {sheet && <Sheet sheet={sheet} />}
        {!sheet && <p class="soft">{say("sheet.others")}</p>}
      </div>
    </details>
  );
}
