// The end of everything about one child. What follows is said before, and the id typed: nothing brings it back.
import { ask } from "../api/ask.ts";
import { Sure } from "../shell/sure.tsx";
import { lines, say } from "./words.ts";

export function EraseChild({ player, erased, onClose }: { player: string; erased: () => void; onClose: () => void }) {
  const erase = async () => {
    const answer = await ask("erase-player", { player }, { player });
    if (!answer.ok) return answer;
    erased();
    return undefined;
  };
  return (
    <Sure title={say("erase.title", { player })} typed={player} button={say("erase.do")} act={erase} onClose={onClose}>
      <ul>
        {lines("erase.follows").map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Sure>
  );
}
