// The turn of a season: the club a year on, squads and players as the server proposes them, moved by the lead, and kept as one
// change that can be taken back. Players keep their ids, so that what was entered of them goes along.
import { useRef, useState } from "preact/hooks";
import { list, wholeDay } from "../../../shared/words/words.ts";
import { type Refusal } from "../../api/answer.ts";
import { ask } from "../../api/ask.ts";
import { Refused } from "../../api/asked.tsx";
import { beginning, done, type History, redone, undone } from "../../drills/edit/history.ts";
import { announce } from "../../shell/announce.ts";
import { named } from "../../shell/parts.tsx";
import { unsaved } from "../club_draft.ts";
import { shippedName } from "../routine/words.ts";
import { CoachesAlong } from "./coaches_along.tsx";
import { keepNextSeason } from "./keep_next_season.ts";
import { inSquad, isTooOld, moved, type MovedPlayer, type Moves, type NextSeason, withoutSquad } from "./next_season.ts";
import { kNowhere, SquadList } from "./squad_list.tsx";
import { many, say } from "./words.ts";

// A value of what is told: a day in words, all else as it is.
// Coaches are named, players are not; a routine of ours has a name in either language.
function inWords(key: string, value: string): string {
  if (key === "coaches") return named(value, "…");
  if (key === "routine" || key === "before") return shippedName(value) ?? value;
  return /^\d{4}-\d{2}-\d{2}$/.test(value) ? wholeDay(value) : value;
}

export function TurnStep() {
  const [next, setNext] = useState<NextSeason | undefined>();
  const [kept, setKept] = useState<NextSeason | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [asks, setAsks] = useState(false);
  const read = async () => {
    setAsks(true);
    const answer = await ask("season-turn", {});
    setAsks(false);
    setRefused(answer.ok ? undefined : answer);
    if (answer.ok) setNext(answer.said);
  };
  if (unsaved.value.length > 0) return <p>{say("save_first")}</p>;
  // What was proposed was of the club before: the next proposal is asked for anew.
  const keptNow = (now: NextSeason) => {
    setKept(now);
    setNext(undefined);
  };
  const back = (why: Refusal | undefined) => {
    setRefused(why);
    if (!why) setKept(undefined);
  };
  if (kept) {
    return (
      <>
        {refused ? <Refused refusal={refused} /> : null}
        <Kept next={kept} />
      </>
    );
  }
  return (
    <>
      <p>{say("what")}</p>
      {refused ? <Refused refusal={refused} again={() => void read()} /> : null}
      {next ? (
        <Preview next={next} kept={() => keptNow(next)} back={back} again={read} forget={() => setNext(undefined)} />
      ) : (
        <button type="button" class="main" aria-disabled={asks} onClick={() => void (asks || read())}>
          {say("show")}
        </button>
      )}
    </>
  );
}

function Kept({ next }: { next: NextSeason }) {
  return (
    <>
      <p role="status">{say("kept", { from: wholeDay(next.season.from) })}</p>
      <CoachesAlong squads={next.squads} />
    </>
  );
}

function useDrag(next: NextSeason, move: (player: MovedPlayer, from: string | undefined, to: string | undefined) => void) {
  const [dragged, setDragged] = useState<{ player: string; from: string; over: string } | undefined>();
  const area = useRef<HTMLDivElement>(null);
  const squadAt = (event: PointerEvent): string | undefined => (document.elementFromPoint(event.clientX, event.clientY)?.closest<HTMLElement>("[data-squad]"))?.dataset["squad"];
  const begin = (event: PointerEvent) => {
    const target = event.target as HTMLElement;
    const player = target.closest<HTMLElement>("[data-player]")?.dataset["player"];
    const from = target.closest<HTMLElement>("[data-squad]")?.dataset["squad"];
    if (player === undefined || from === undefined || target.closest("select, button") || event.button !== 0 || event.pointerType === "touch") return;
    area.current?.setPointerCapture(event.pointerId);
    setDragged({ player, from, over: from });
  };
  const over = (event: PointerEvent) => dragged && setDragged({ ...dragged, over: squadAt(event) ?? dragged.from });
  const end = () => {
    const player = next.players.find((one) => one.player === dragged?.player);
    if (dragged && player && dragged.over !== dragged.from) move(player, dragged.from === kNowhere ? undefined : dragged.from, dragged.over === kNowhere ? undefined : dragged.over);
    setDragged(undefined);
  };
  return { area, over: dragged && dragged.over !== dragged.from ? dragged.over : undefined, doings: { onPointerDown: begin, onPointerMove: over, onPointerUp: end, onPointerCancel: () => setDragged(undefined) } };
}

interface PreviewProps {
  next: NextSeason;
  kept: () => void;
  back: (refused: Refusal | undefined) => void;
  again: () => Promise<void>;
  forget: () => void;
}

function Preview({ next, kept, back, again, forget }: PreviewProps) {
  const [history, setHistory] = useState<History<Moves>>(beginning<Moves>({}));
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [sends, setSends] = useState(false);
  const moves = history.now;
  const nameOf = (id: string | undefined) => (id === undefined ? say("nowhere") : (next.squads.find(({ squad }) => squad === id)?.name ?? id));
  const move = (player: MovedPlayer, from: string | undefined, to: string | undefined) => {
    setHistory(done(history, moved(moves, player, from, to)));
    announce(say("moved", { name: named(player.name, player.player), squad: nameOf(to) }));
  };
  const drag = useDrag(next, move);
  const nowhere = withoutSquad(next, moves);
  const too_old = next.squads.reduce((sum, squad) => sum + inSquad(next, moves, squad.squad).filter((player) => isTooOld(player, squad)).length, 0);
  const keep = async () => {
    if (sends) return;
    setSends(true);
    const why = await keepNextSeason(next, moves, back);
    // Somebody else changed the club: it is proposed anew, the moves stay, and it is kept once they were looked at again.
    if (why?.refused === "changed-meanwhile") await again();
    setSends(false);
    setRefused(why);
    if (!why) kept();
  };
  return (
    <>
      <p>
        <strong>{say("season", { from: wholeDay(next.season.from), to: wholeDay(next.season.to), monday: wholeDay(next.first_monday) })}</strong>
      </p>
      {next.ends.length > 0 ? (
        <p>
          <bdi>{say("ends", { squads: list(next.ends.map(({ name }) => name)) })}</bdi>
        </p>
      ) : null}
      {too_old > 0 ? <p class="fault">{many("too_old", too_old)}</p> : null}
      <p class="soft">{say("how")}</p>
      <p class="row">
        <button type="button" disabled={history.before.length === 0} onClick={() => setHistory(undone(history))}>
          {say("undo")}
        </button>
        <button type="button" disabled={history.after.length === 0} onClick={() => setHistory(redone(history))}>
          {say("redo")}
        </button>
      </p>
      <div ref={drag.area} class="turn-squads" {...drag.doings}>
        {next.squads.map((squad) => (
          <SquadList key={squad.squad} next={next} moves={moves} squad={squad} players={inSquad(next, moves, squad.squad)} over={drag.over === squad.squad} move={move} />
        ))}
        <SquadList next={next} moves={moves} squad={undefined} players={nowhere} over={drag.over === kNowhere} move={move} />
      </div>
      <details class="sheet">
        <summary>{say("told")}</summary>
        <ul>
          {next.told.map(({ code, sentence, values }) => (
            <li key={sentence}>{say(`turned.${code}`, Object.fromEntries(Object.entries(values).map(([key, value]) => [key, inWords(key, value)])))}</li>
          ))}
        </ul>
      </details>
      {refused ? <Refused refusal={refused} /> : null}
      {refused && refused.faults.length > 0 ? (
        <ul lang="en">
          {refused.faults.slice(0, 20).map((fault, at) => (
            <li key={at}>{`${fault.field}: ${fault.found}; ${fault.expected}`}</li>
          ))}
        </ul>
      ) : null}
      <p class="row">
        <button type="button" class="main" aria-disabled={sends} onClick={() => void keep()}>
          {say("keep")}
        </button>
        <button type="button" onClick={forget}>
          {say("not_now")}
        </button>
      </p>
    </>
  );
}
