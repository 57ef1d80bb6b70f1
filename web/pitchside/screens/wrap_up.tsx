// Wrap up in three taps: how many, how it went, what needs help.
import type { DidIt } from "../evening/evening_state.ts";
import { say } from "../words/words.ts";
import { nameOf } from "./drill_words.ts";
import { Head, HurtButton, Stepper, Toggle } from "./parts.tsx";
import type { Pitch } from "./pitch.ts";

const kAnswers: DidIt[] = ["most", "half", "few"];
const kWords = { most: "wrap_up.most", half: "wrap_up.half", few: "wrap_up.few", nobody: "wrap_up.few" } as const;

export function WrapUpScreen({ pitch }: { pitch: Pitch }) {
  const { wrap_up, plan, run, marks, facts } = pitch.evening.value;
  const done = (plan?.items ?? []).filter((item) => !run || marks[item.drill]?.includes("done"));
  const help = (drill: string, yes: boolean) => pitch.happen({ event: "needs-help", drill, yes });
  const finish = () => {
    const players = pitch.pack.roster.map((each) => each.player).filter((player) => !facts.away.includes(player));
    const at = Date.now();
    pitch.happen(facts.named && players.length === wrap_up.there ? { event: "wrapped-up", at, players } : { event: "wrapped-up", at });
  };
  const unfinished = wrap_up.minutes === undefined && run !== undefined && plan !== undefined && run.item < plan.items.length;
  return (
    <>
      <Head title={say("wrap_up.title")}>
        <HurtButton pitch={pitch} />
      </Head>
      <main>
        <Stepper
          label={say("wrap_up.there")}
          value={wrap_up.there}
          least={0}
          most={200}
          onChange={(count) => pitch.happen({ event: "there", count })}
        />
        <h2>{say("wrap_up.did_it")}</h2>
        <div class="row" role="group" aria-label={say("wrap_up.did_it")}>
          {kAnswers.map((each) => (
            <Toggle
              key={each}
              label={say(kWords[each])}
              on={wrap_up.did_it === each}
              onChange={() => pitch.happen({ event: "did-it", did_it: each })}
            />
          ))}
        </div>
        {!wrap_up.did_it && <p class="soft">{say("wrap_up.finish_needs")}</p>}
        {done.length > 0 && <h2>{say("wrap_up.needs_help")}</h2>}
        <div class="row" role="group" aria-label={say("wrap_up.needs_help")}>
          {done.map((item) => (
            <Toggle
              key={item.drill}
              label={nameOf(pitch.pack, item.drill)}
              on={wrap_up.needs_help.includes(item.drill)}
              onChange={(yes) => help(item.drill, yes)}
            />
          ))}
        </div>
      </main>
      <footer class="bar together">
        {unfinished && (
          <button type="button" onClick={() => pitch.happen({ event: "go", screen: "run" })}>
            {say("wrap_up.back_to_run")}
          </button>
        )}
        <button type="button" class="main" disabled={!wrap_up.did_it} onClick={finish}>
          {say("wrap_up.finish")}
        </button>
      </footer>
    </>
  );
}
