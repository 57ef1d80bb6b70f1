// Run: one drill a screen. What to say above, what to tap under the thumb; 'Someone is hurt' always in reach.
import { useMemo } from "preact/hooks";
import type { PlanItem } from "../../shared/engine/answers.ts";
import { courseOf } from "../evening/course.ts";
import { drillOf, rungBeside, type Drill } from "../evening/drill.ts";
import { where } from "../evening/where.ts";
import type { EveningPackage } from "../package/evening_package.ts";
import { say } from "../words/words.ts";
import { useAwake } from "./awake.ts";
import { DrillClock } from "./drill_clock.tsx";
import { doseWords, drillIn, nameOf, rungWords } from "./drill_words.ts";
import { Figure } from "./figure.tsx";
import { LateOffer } from "./late_offer.tsx";
import { useNow } from "./now.ts";
import { HurtButton } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";

function Cues({ drill, telling }: { drill: Drill; telling: boolean }) {
  const how = (
    <p class="how">
      <strong>{say("run.how")}:</strong> {drill.how}
    </p>
  );
  return (
    <>
      {telling && how}
      <ul class="cues" aria-label={say("run.cues")}>
        {drill.cues.slice(0, 3).map((cue) => (
          <li key={cue}>{cue}</li>
        ))}
      </ul>
      {!telling && how}
      <h2>{say("run.watch")}</h2>
      <ul>
        {drill.watch.map(({ fault, cue }) => (
          <li key={fault}>{say("run.watch_line", { fault, cue })}</li>
        ))}
      </ul>
      <h2>{say("run.stop_if")}</h2>
      <p>{drill.stop_if.join("; ")}</p>
    </>
  );
}

function Next({ pack, item }: { pack: EveningPackage; item: PlanItem | undefined }) {
  return (
    <p class="next">
      {item ? (
        <>
          <span class="soft">{say("run.next")}: </span>
          <strong>{nameOf(pack, item.drill)}</strong>, {doseWords(pack, item)}
        </>
      ) : (
        say("run.last")
      )}
    </p>
  );
}

interface ButtonsProps {
  pitch: Pitch;
  item: number;
  next: PlanItem | undefined;
  drill: Drill | undefined;
  paused: boolean;
}

function Buttons({ pitch, item, next, drill, paused }: ButtonsProps) {
  const rung = pitch.evening.value.plan?.items[item]?.rung ?? "";
  const onRung = (event: "easier" | "harder") => {
    const beside = rungBeside(drill, rung, event === "easier" ? -1 : 1);
    pitch.happen(beside ? { event, item, rung: beside } : { event, item });
  };
  const at = () => Date.now();
  return (
    <footer class="bar">
      <Next pack={pitch.pack} item={next} />
      <button type="button" class="main done" onClick={() => pitch.happen({ event: "done", item, at: at() })}>
        {say("run.done")}
      </button>
      <button type="button" aria-pressed={paused} onClick={() => pitch.happen({ event: paused ? "go-on" : "pause", at: at() })}>
        {paused ? say("run.go_on") : say("run.pause")}
      </button>
      <button type="button" onClick={() => pitch.happen({ event: "skip", item, at: at() })}>
        {say("run.skip")}
      </button>
      <button type="button" onClick={() => onRung("easier")}>
        {say("run.easier")}
      </button>
      <button type="button" onClick={() => onRung("harder")}>
        {say("run.harder")}
      </button>
    </footer>
  );
}

export function RunScreen({ pitch }: { pitch: Pitch }) {
  const state = pitch.evening.value;
  const paused = state.run?.paused ?? false;
  const now = useNow(!paused);
  useAwake(true);
  const found = where(state, Math.max(now, state.run?.item_since ?? 0));
  const item = found?.drill;
  const drill = item && drillIn(pitch.pack, item.drill);
  const course = useMemo(() => item && drill && courseOf(item, drill), [item?.drill, item?.rung, item?.amount, item?.sets]);
  if (!found || !item) return null;
  const marks = state.marks[item.drill] ?? [];
  const noted = (["easier", "harder"] as const).filter((mark) => marks.includes(mark));
  // Tapped at the end of the ladder: it is noted, and said that nothing else changes.
  const atEnd = noted.filter((mark) => !rungBeside(drill, item.rung, mark === "easier" ? -1 : 1)).pop();
  const spoken = [nameOf(pitch.pack, item.drill), rungWords(item), ...(drill?.cues ?? [])].join(". ");
  return (
    <div class="run">
      <header class="head">
        <p>
          <strong>{say("run.place", { at: found.item + 1, all: state.plan?.items.length ?? 0 })}</strong>
        </p>
        <HurtButton pitch={pitch} />
      </header>
      <main>
        <h1 tabIndex={-1}>{nameOf(pitch.pack, item.drill)}</h1>
        <p class="large where" aria-live="polite">
          <strong>{doseWords(pitch.pack, item)}</strong>
          <span>{rungWords(item)}</span>
          {noted.length > 0 && <span class="soft">({noted.map((mark) => say(`run.${mark}`).toLowerCase()).join(", ")})</span>}
        </p>
        {atEnd && <p class="soft">{say(`run.no_${atEnd}`)}</p>}
        {course && <DrillClock pitch={pitch} item={item} course={course} seconds={found.seconds} paused={paused} spoken={spoken} />}
        <LateOffer pitch={pitch} now={now} />
        <Figure pitch={pitch} drill={item.drill} rung={item.rung} name={nameOf(pitch.pack, item.drill)} seconds={course?.tempo ?? 0} moving={!paused} />
        {drill && <Cues drill={drill} telling={found.seconds < drill.telling_seconds} />}
        <div class="row">
          {found.item > 0 && (
            <button type="button" onClick={() => pitch.happen({ event: "back", item: found.item, at: Date.now() })}>
              {say("say.back")}
            </button>
          )}
          <button type="button" onClick={() => (pitch.overlay.value = "slip")}>
            {say("tonight.slip")}
          </button>
          <button type="button" onClick={() => (pitch.overlay.value = "settings")}>
            {say("tonight.settings")}
          </button>
          <button type="button" onClick={() => pitch.happen({ event: "go", screen: "wrap-up" })}>
            {say("run.finish_early")}
          </button>
        </div>
      </main>
      <Buttons pitch={pitch} item={found.item} next={found.next} drill={drillOf(pitch.pack, item.drill)} paused={paused} />
    </div>
  );
}
