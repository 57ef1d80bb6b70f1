// Is it done, and is it done well: what was told of evenings, of the club and of each squad, by name and never by order.
import type { Release, ReleaseDone } from "../../shared/api.ts";
import { number } from "../../shared/words/words.ts";
import { type Column, Table } from "../shell/table.tsx";
import { kTold, ToldBar, ToldKey } from "./told_bar.tsx";
import { many, say } from "./words.ts";

export const toldOf = ({ held, cut_short, missed }: ReleaseDone): number => held + cut_short + missed;
export const tookPlace = ({ held, cut_short }: ReleaseDone): number => held + cut_short;
const unanswered = (done: ReleaseDone): number => Math.max(0, tookPlace(done) - done.most - done.half - done.few);
// Of how many planned evenings nobody told; undefined where it is not known what was planned, or nothing was.
export function untoldWords({ planned, untold }: ReleaseDone): string | undefined {
  if (planned === undefined || untold === undefined || planned === 0) return undefined;
  if (untold === 0) return say("done.all_told", { planned: number(planned) });
  return say("done.untold", { planned: number(planned), untold: number(untold), percent: percentOf(untold, planned) });
}
export const percentOf = (count: number, whole: number): string => number(Math.round((100 * count) / Math.max(whole, 1)));

type Counted = (typeof kTold)[number] | "untold" | "most" | "half" | "few" | "hours";
const counted = (key: Counted): Column<ReleaseDone> => ({
  key, heading: say(key === "untold" ? "done.untold_heading" : `done.${key}`), numeric: true, cell: (row) => number(row[key] ?? NaN), value: (row) => row[key] ?? NaN,
});

export function DoneSections({ sessions: { all, squads } }: Pick<Release, "sessions">) {
  const told = toldOf(all);
  if (told === 0) {
    return (
      <>
        <h3>{say("done.title")}</h3>
        <p>
          {say("done.nothing")} {untoldWords(all)}
        </p>
      </>
    );
  }
  return (
    <>
      <h3>{say("done.title")}</h3>
      <p>{say("done.sentence", { told: number(told), held: number(all.held), cut_short: number(all.cut_short), missed: number(all.missed), percent: percentOf(tookPlace(all), told) })}</p>
      {untoldWords(all) === undefined ? null : <p>{untoldWords(all)}</p>}
      <ToldBar done={all} most={told} />
      <ToldKey />
      <h3>{say("well.title")}</h3>
      <p>
        {say("well.sentence", { took_place: number(tookPlace(all)), most: number(all.most), half: number(all.half), few: number(all.few) })} {unanswered(all) > 0 ? many("unanswered", unanswered(all)) : ""} {say("well.means")}
      </p>
      <BySquad squads={squads} hours={all.hours > 0} planned={all.planned !== undefined} />
      <p class="soft">
        {say(all.planned === undefined ? "done.means" : "done.means_planned")} {all.confirmed > 0 ? say("well.confirmed", { confirmed: number(all.confirmed), took_place: number(tookPlace(all)) }) : say("well.none_confirmed")}
      </p>
    </>
  );
}

function BySquad({ squads, hours, planned }: { squads: ReleaseDone[]; hours: boolean; planned: boolean }) {
  const most = Math.max(...squads.map(toldOf), 1);
  const columns: Column<ReleaseDone>[] = [
    { key: "name", heading: say("done.squad"), names: true, cell: (row) => <bdi>{row.name}</bdi>, value: (row) => row.name ?? "" },
    ...kTold.map(counted),
    ...(planned ? [counted("untold")] : []),
    { key: "bar", heading: say("done.bar", { most: number(most) }), cell: (row) => <ToldBar done={row} most={most} /> },
    ...(["most", "half", "few"] as const).map(counted),
    ...(hours ? [counted("hours")] : []),
  ];
  return <Table caption={say("done.by_squad")} show_caption columns={columns} rows={squads} rowKey={({ key }) => key ?? ""} />;
}
