// The block as a grid: drills down, sessions across, each cell a dose and what is new in it.
import { keyOfSession, type BlockSession, type PlannedDrill, type SquadBlock, type WhatChanged } from "./block.ts";

export interface Column {
  key: string;
  session: BlockSession;
  number_in_week: number; // from 1
  opens_week: boolean;
  opens_spell: boolean;
}

export interface Cell {
  planned?: PlannedDrill; // absent: not done in that session
  what?: WhatChanged; // against the plan that stood before
  other_rung: boolean; // than the session before that had the drill
}

export interface Row {
  drill: string;
  matches_only: boolean; // in no training of the block
  cells: Cell[]; // one a column
}

export interface Grid {
  columns: Column[];
  rows: Row[];
}

function columnsOf(block: SquadBlock): Column[] {
  const opening = new Set(block.spells.map(({ first_week }) => first_week));
  let last = 0;
  let number_in_week = 0;
  return block.sessions.map((session) => {
    const opens_week = session.week !== last;
    // A spell's first week may have no session: the next one opens it then.
    const opens_spell = opens_week && [...opening].some((week) => week > last && week <= session.week);
    number_in_week = opens_week ? 1 : number_in_week + 1;
    last = session.week;
    return { key: keyOfSession(session), session, number_in_week, opens_week, opens_spell };
  });
}

// Every session has its drills in one order (docs/model/session.md), so the rows keep it: a drill that is met anew stands
// behind the one before it.
function orderOf(sessions: BlockSession[]): string[] {
  const order: string[] = [];
  for (const { drills } of sessions) {
    let after = -1;
    for (const { drill } of drills) {
      const at = order.indexOf(drill);
      if (at < 0) order.splice(++after, 0, drill);
      else after = Math.max(after, at);
    }
  }
  return order;
}

export function gridOf(block: SquadBlock): Grid {
  const columns = columnsOf(block);
  const changed = new Map(
    (block.rolling?.sessions ?? []).flatMap((session) =>
      session.changes.map(({ drill, what }): [string, WhatChanged] => [`${keyOfSession(session)} ${drill}`, what]),
    ),
  );
  const trainings = block.sessions.filter(({ match_day }) => !match_day);
  const matches = block.sessions.filter(({ match_day }) => match_day);
  const order = orderOf(trainings);
  const other = orderOf(matches).filter((drill) => !order.includes(drill));
  const rows = [...order, ...other].map((drill): Row => {
    let rung: string | undefined;
    const cells = columns.map(({ key, session }): Cell => {
      const planned = session.drills.find((each) => each.drill === drill);
      const what = changed.get(`${key} ${drill}`);
      const cell: Cell = { other_rung: false };
      if (what) cell.what = what;
      if (!planned) return cell;
      cell.planned = planned;
      cell.other_rung = rung !== undefined && rung !== planned.rung;
      rung = planned.rung;
      return cell;
    });
    return { drill, matches_only: !order.includes(drill), cells };
  });
  return { columns, rows };
}
