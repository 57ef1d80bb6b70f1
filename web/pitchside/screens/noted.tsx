// What was noted of players tonight, each with its way back: a wrong tap is taken back by a later entry, never wiped out.
import type { Entered } from "../evening/evening_state.ts";
import { say } from "../words/words.ts";
import type { Pitch } from "./pitch.ts";
import { whoIs } from "./who.tsx";

interface NotedProps {
  pitch: Pitch;
  kind: "hurt" | "soreness";
  words(entry: Entered): string;
}

export function Noted({ pitch, kind, words }: NotedProps) {
  const noted = (pitch.evening.value.entered ?? []).filter((each) => each.kind === kind);
  if (noted.length === 0) return null;
  return (
    <>
      <h3>{say("mistake.noted_tonight")}</h3>
      <ul class="list">
        {noted.map((each) => (
          <li key={each.id}>
            <span>
              <strong class={each.taken_back ? "left-out" : ""}>{whoIs(pitch, each.about)}</strong>{" "}
              {each.taken_back ? say("mistake.taken_back") : words(each)}
            </span>
            {!each.taken_back && (
              <button
                type="button"
                aria-label={say("mistake.for_who", { who: whoIs(pitch, each.about) })}
                onClick={() => pitch.happen({ event: "take-back", id: each.id })}
              >
                {say("mistake.take_back")}
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
