// Where a drill may stand: order follows the phase, a family stays together inside it, and families stand as the routine
// has them first (docs/model/session.md). So a move within the family changes its order, and a move past another family
// takes the whole family along.
export interface Placed {
  drill: string;
  phase: string;
  family: string;
}

const sameGroup = (one: Placed, other: Placed): boolean => one.phase === other.phase && one.family === other.family;

function groupsOf(drills: Placed[]): Placed[][] {
  const groups: Placed[][] = [];
  for (const drill of drills) {
    const last = groups.at(-1);
    if (last?.[0] && sameGroup(last[0], drill)) last.push(drill);
    else groups.push([drill]);
  }
  return groups;
}

export function mayStandAt(drills: Placed[], drill: string, at: string): boolean {
  const own = drills.find((each) => each.drill === drill);
  const there = drills.find((each) => each.drill === at);
  return own !== undefined && there !== undefined && own.drill !== there.drill && own.phase === there.phase;
}

function movedIn<Item>(list: Item[], from: number, to: number): Item[] {
  const rest = list.filter((_, index) => index !== from);
  return [...rest.slice(0, to), list[from] as Item, ...rest.slice(to)];
}

// The drills with that one in the place of the other, and what was there moved aside; absent where it may not stand there.
export function movedTo(drills: Placed[], drill: string, at: string): Placed[] | undefined {
  if (!mayStandAt(drills, drill, at)) return undefined;
  const groups = groupsOf(drills);
  const groupWith = (id: string) => groups.findIndex((group) => group.some((each) => each.drill === id));
  const from = groupWith(drill);
  const to = groupWith(at);
  if (from !== to) return movedIn(groups, from, to).flat();
  const group = groups[from] ?? [];
  const place = (id: string) => group.findIndex((each) => each.drill === id);
  return groups.map((each, index) => (index === from ? movedIn(group, place(drill), place(at)) : each)).flat();
}

// One place earlier or later, where there is one.
export function movedBy(drills: Placed[], drill: string, by: 1 | -1): Placed[] | undefined {
  const at = drills.findIndex((each) => each.drill === drill);
  const beside = drills[at + by];
  return at < 0 || !beside ? undefined : movedTo(drills, drill, beside.drill);
}

// The session's drills in their new order, among those of the routine that are left out of it. These stay beside their own
// family, so that none of them moves it, or behind the drill that they follow.
export function orderWith(routine: Placed[], session: Placed[]): string[] {
  const order = [...session];
  routine.forEach((drill, index) => {
    if (order.some((each) => each.drill === drill.drill)) return;
    const group = order.filter((each) => sameGroup(each, drill));
    const before = routine.slice(0, index).reverse();
    const there = (each: Placed) => order.findIndex((other) => other.drill === each.drill);
    const follows = before.find((each) => there(each) >= 0 && (group.length === 0 || sameGroup(each, drill)));
    const first = group[0];
    order.splice(follows ? there(follows) + 1 : first ? order.indexOf(first) : 0, 0, drill);
  });
  return order.map((each) => each.drill);
}
