// The drills of tonight: each can be kept for sure, swapped for one of the two nearest, or left out.
import { useState } from "preact/hooks";
import type { PlanItem } from "../../shared/engine/answers.ts";
import type { Facts } from "../evening/evening_state.ts";
import { swapped, unswapped, type Alternative } from "../evening/nearest.ts";
import { list, many, say } from "../words/words.ts";
import { doseWords, familyWords, nameOf, rungWords } from "./drill_words.ts";
import { Toggle } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";

function costWords(pitch: Pitch, cost: Alternative): string {
  const names = (drills: string[]) => list(drills.map((drill) => nameOf(pitch.pack, drill)));
  const seconds = many("seconds", Math.abs(cost.seconds));
  const words = [cost.seconds === 0 ? say("swap.as_long") : say(cost.seconds > 0 ? "swap.longer" : "swap.shorter", { seconds })];
  if (cost.finish) words.push(say("swap.done_by", { finish: cost.finish }));
  if (cost.out.length > 0) words.push(say("swap.also_out", { names: names(cost.out) }));
  if (cost.less.length > 0) words.push(say("swap.less_of", { names: names(cost.less) }));
  if (cost.come.length > 0) words.push(say("swap.comes", { names: names(cost.come) }));
  if (cost.uncovered.length > 0) words.push(say("swap.uncovered", { families: list(cost.uncovered.map(familyWords)) }));
  return `${words.join(". ")}.`;
}

interface ChoicesProps {
  pitch: Pitch;
  item: PlanItem;
  found: Alternative[] | undefined;
  onTake(drill: string): void;
}

function Choices({ pitch, item, found, onTake }: ChoicesProps) {
  if (!found) return <p role="status">{say("swap.looking")}</p>;
  if (found.length === 0) return <p role="status">{say("swap.none")}</p>;
  return (
    <div class="choices" role="group" aria-label={say("swap.for", { name: nameOf(pitch.pack, item.drill) })}>
      {found.map((each) => (
        <button key={each.drill} type="button" onClick={() => onTake(each.drill)}>
          <span>
            <strong>{nameOf(pitch.pack, each.drill)}</strong>, {doseWords(pitch.pack, each)}
            <br />
            <span class="soft">{costWords(pitch, each)}</span>
          </span>
        </button>
      ))}
    </div>
  );
}

export function DrillList({ pitch }: { pitch: Pitch }) {
  const { plan, facts } = pitch.evening.value;
  const [open, setOpen] = useState(""); // the drill to be swapped
  const [found, setFound] = useState<Alternative[] | undefined>();
  const change = (changed: Partial<Facts>) => {
    setOpen("");
    pitch.happen({ event: "facts", facts: changed });
  };
  const look = (drill: string) => {
    setOpen(open === drill ? "" : drill);
    setFound(undefined);
    if (open !== drill) void pitch.nearest(drill).then((alternatives) => setFound(alternatives));
  };
  const put = (drills: string[], drill: string, there: boolean) => [...drills.filter((each) => each !== drill), ...(there ? [drill] : [])];
  return (
    <details>
      <summary>{say("tonight.drills")}</summary>
      <ul class="inside list">
        {plan?.items.map((item) => (
          <li key={item.drill}>
            <span>
              <strong>{nameOf(pitch.pack, item.drill)}</strong>
              <br />
              <span class="soft">
                {rungWords(item)}, {doseWords(pitch.pack, item)}
              </span>
            </span>
            <span class="row" role="group" aria-label={nameOf(pitch.pack, item.drill)}>
              <Toggle
                label={say("swap.keep")}
                on={facts.pins.includes(item.drill)}
                onChange={(on) => change({ pins: put(facts.pins, item.drill, on) })}
              />
              <Toggle label={say("swap.swap")} on={open === item.drill} onChange={() => look(item.drill)} />
              <button
                type="button"
                aria-label={`${nameOf(pitch.pack, item.drill)}: ${say("tonight.not_tonight")}`}
                onClick={() => change({ bans: put(facts.bans, item.drill, true), pins: put(facts.pins, item.drill, false) })}
              >
                {say("tonight.not_tonight")}
              </button>
            </span>
            {open === item.drill && (
              <Choices pitch={pitch} item={item} found={found} onTake={(drill) => change(swapped(facts, item.drill, drill))} />
            )}
          </li>
        ))}
        {facts.pins.filter((drill) => !plan?.items.some((item) => item.drill === drill)).map((drill) => (
          <li key={drill}>
            <span>{nameOf(pitch.pack, drill)}</span>
            <Toggle label={say("swap.keep")} on={true} onChange={() => change({ pins: put(facts.pins, drill, false) })} />
          </li>
        ))}
        {facts.bans.map((drill) => (
          <li key={drill}>
            <span class="left-out">{nameOf(pitch.pack, drill)}</span>
            <button
              type="button"
              aria-label={`${nameOf(pitch.pack, drill)}: ${say("tonight.do_it")}`}
              onClick={() => change(unswapped(facts, drill))}
            >
              {say("tonight.do_it")}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
