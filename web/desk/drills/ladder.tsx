// The ladder of a drill, easiest first: each rung by what changes, and what that asks of the body.
import type { DrillDocument, Rung } from "./drill_document.ts";
import { figureOf } from "./figures.ts";
import { SmallFigure } from "./pictures.tsx";
import { list } from "../../shared/words/words.ts";
import { say, wordFor } from "./words.ts";

interface LadderProps {
  drill: DrillDocument;
  words: DrillDocument; // the same in the language set
  shown: string;
  show: (rung: string) => void;
}

// What is graded otherwise than on the drill's other rungs.
function differences(drill: DrillDocument, rung: Rung): string[] {
  const more: string[] = [];
  const less: string[] = [];
  for (const { area, kind, grade } of rung.stress ?? []) {
    const usual = drill.stress.find((one) => one.area === area && one.kind === kind)?.grade ?? 0;
    if (grade === usual) continue;
    (grade > usual ? more : less).push(`${wordFor("area", area)} (${wordFor("stress", kind)})`);
  }
  return [
    ...(more.length > 0 ? [say("ladder.more", { areas: list(more) })] : []),
    ...(less.length > 0 ? [say("ladder.less", { areas: list(less) })] : []),
    ...(rung.load !== undefined && rung.load !== 1 ? [say("ladder.load", { percent: Math.round(rung.load * 100) })] : []),
    ...(rung.ages_from ? [say("ladder.from", { age: rung.ages_from })] : []),
    ...((rung.needs ?? []).length > 0 ? [say("needs", { needs: list((rung.needs ?? []).map((need) => wordFor("need", need))) })] : []),
  ];
}

export function Ladder({ drill, words, shown, show }: LadderProps) {
  return (
    <>
      <h2>{say("part.ladder")}</h2>
      <p class="soft">{say("ladder.about")}</p>
      <ul class="ladder">
        {words.rung.map((rung, index) => {
          const own = drill.rung[index] ?? rung;
          return (
            <li key={rung.key}>
              <button type="button" aria-pressed={rung.key === shown} onClick={() => show(rung.key)}>
                <SmallFigure figure={figureOf(drill, rung.key)} />
                <span>
                  <strong>{rung.change}</strong>
                  {differences(drill, own).map((one) => (
                    <span key={one} class="soft">
                      {one}
                    </span>
                  ))}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
