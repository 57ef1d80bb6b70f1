// One squad of the next season with its players: dragged from one to another, or moved by the choice beside each.
import { list } from "../../../shared/words/words.ts";
import { named } from "../../shell/parts.tsx";
import { contentOf } from "../club_draft.ts";
import { goesTo, isTooOld, type MovedPlayer, type Moves, type NextSeason, type NextSquad, oldestOf } from "./next_season.ts";
import { many, say } from "./words.ts";

export const kNowhere = "";

interface ListProps {
  next: NextSeason;
  moves: Moves;
  squad: NextSquad | undefined; // of those without one
  players: MovedPlayer[];
  over: boolean; // a player that is being dragged is above it
  move: (player: MovedPlayer, from: string | undefined, to: string | undefined) => void;
}

export function SquadList({ next, moves, squad, players, over, move }: ListProps) {
  const id = squad?.squad ?? kNowhere;
  const was = squad ? squad.was.filter((one) => one !== squad.squad) : [];
  return (
    <section class={over ? "turn-squad over" : "turn-squad"} data-squad={id} aria-label={squad?.name ?? say("nowhere")}>
      <h3>
        <bdi>{squad?.name ?? say("nowhere")}</bdi> <span class="soft">{many("players", players.length)}</span>
      </h3>
      {was.length > 0 ? (
        <p class="soft">
          <bdi>{say("was", { squads: list(was.map((one) => String(contentOf(`squads/${one}.toml`)?.name ?? one))) })}</bdi>
        </p>
      ) : null}
      <ul>
        {players.map((player) => (
          <PlayerLine key={player.player} next={next} moves={moves} squad={squad} player={player} move={move} />
        ))}
      </ul>
    </section>
  );
}

function PlayerLine({ next, moves, squad, player, move }: Omit<ListProps, "players" | "over"> & { player: MovedPlayer }) {
  const name = named(player.name, player.player);
  const here = squad?.squad;
  const own = goesTo(player, moves);
  const changed = Object.hasOwn(moves, player.player);
  const too_old = squad !== undefined && isTooOld(player, squad);
  return (
    <li data-player={player.player} class={changed ? "turn-player changed" : "turn-player"}>
      <span>
        <bdi>{name}</bdi> {player.age === undefined ? null : <span class="soft">{say("age", { age: player.age })}</span>}
        {own.length > 1 ? <span class="soft"> {say("in_two")}</span> : null}
        {too_old ? <span class="fault"> {say("too_old", { age: oldestOf(squad) ?? 0 })}</span> : null}
      </span>
      <select aria-label={say("goes_to", { name })} value={here ?? kNowhere} onChange={(event) => move(player, here, event.currentTarget.value === kNowhere ? undefined : event.currentTarget.value)}>
        {next.squads.map((one) => (
          <option key={one.squad} value={one.squad}>
            {one.name}
          </option>
        ))}
        <option value={kNowhere}>{say("leaves")}</option>
      </select>
    </li>
  );
}
