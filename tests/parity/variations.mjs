// Requests like those of a phone on many evenings, by a seed: each a saved request with one to four things changed, as a coach or a
// club would change them, and now and then something that no door should take.

// Mulberry32, by its author in the public domain: the same numbers everywhere.
function numbersFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

class Dice {
  constructor(seed) {
    this.next = numbersFrom(seed);
  }

  whole(least, most) {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  one(list) {
    return list[this.whole(0, list.length - 1)];
  }

  some(list, most) {
    const out = new Set();
    for (let count = this.whole(1, most); count > 0; count--) out.add(this.one(list));
    return [...out];
  }
}

const idsOf = ({ catalogue }) => catalogue.drills.map(({ id }) => id);
const playersOf = ({ roster, squad }) => roster.filter(({ squads }) => !squad.in_roster || squads?.includes(squad.in_roster)).map(({ id }) => id);
const kPlaces = ["ankle", "knee", "groin", "hip", "back", "shoulder"];
const kInstructions = ["no jumping", "no sharp turns", "only what does not hurt", "sits out until the lead has spoken with the family"];

// Each changes the request in its own copy.
const kChanges = {
  turnout: (request, dice) => Object.assign(request.squad.tonight, { turnout: dice.whole(2, 40), late: dice.whole(0, 1) }),
  late: (request, dice) => (request.squad.tonight.late = dice.whole(0, 6)),
  away: (request, dice) => {
    delete request.squad.tonight.turnout;
    request.squad.tonight.away = dice.some(playersOf(request), 5);
  },
  minutes: (request, dice) => (request.squad.slot.minutes = dice.whole(5, 60)),
  match: (request, dice) => (request.squad.slot.days_to_match = dice.whole(0, 6)),
  lanes: (request, dice) => (request.strip.lanes = dice.whole(1, 12)),
  length: (request, dice) => (request.strip.lane_length_metres = dice.whole(50, 600) / 10),
  surface: (request, dice) => (request.strip.surface = dice.some(["wet", "hard", "uneven", "dark"], 3)),
  kit: (request, dice) => (request.squad.kit[dice.one(["cones", "balls", "mats"])] = dice.whole(0, 12)),
  bans: (request, dice) => (request.squad.tonight.bans = dice.some(idsOf(request), 4)),
  pins: (request, dice) => (request.squad.tonight.pins = dice.some(request.routine.drill.map(({ id }) => id), 2).map((drill) => ({ drill }))),
  seed: (request, dice) => (request.squad.tonight.seed = dice.whole(1, 100000)),
  restrictions: (request, dice) => {
    delete request.permissions;
    request.restrictions = { as_known: "Sunday 20:10", restriction: dice.some(playersOf(request), 3).map((player) => ({ player, allowed: dice.one(["none", "light"]), areas: [dice.one(kPlaces)], instruction: dice.one(kInstructions) })) };
  },
  permissions: (request, dice) => {
    delete request.restrictions;
    request.permissions = {
      as_known: "Sunday 20:10", partners: [],
      permission: dice.some(playersOf(request), 3).map((player) => ({ player, instruction: dice.one(kInstructions), bars: dice.some(idsOf(request), 6).map((drill) => [drill]) })),
    };
  },
};

// Each is to be refused, with the same words.
const kMistakes = [
  (request) => (request.squad.slot.minutes = "twelve"),
  (request) => (request.strip.lanes = -1),
  (request) => delete request.routine,
  (request, dice) => (request.squad.tonight.bans = [`${dice.one(idsOf(request))}-☃`]),
  (request) => (request.strip.lane_length_metres = 1e308),
];

function figureOf({ catalogue }, dice) {
  const drill = dice.one(catalogue.drills);
  return { request: "figure", drill, rung: dice.one(drill.rung).key, frames: dice.whole(1, 60), props: dice.next() < 0.7 };
}

// A drill as a form has it while somebody writes.
const kWritten = [
  (drill) => (drill.name = ""),
  (drill, dice) => (drill.ages.to = dice.whole(1, 30)),
  (drill, dice) => (drill.phase = dice.one(["start", "loosen", "build", "spring", "run", "later"])),
  (drill, dice) => (drill.dose.steps[0].amount = dice.whole(0, 300)),
  (drill) => (drill.sources.dose = ["nobody-2031"]),
  (drill, dice) => (drill.figure.pose[0].angles = { knee: dice.whole(-400, 400) / 3 }),
  (drill) => delete drill.cues,
  (drill, dice) => (drill[`key ${dice.whole(1, 9)} ☃`] = 1),
];

function checkOf({ catalogue }, dice) {
  const drill = structuredClone(dice.one(catalogue.drills));
  const instead_of = drill.id;
  for (const change of dice.some(kWritten, 3)) change(drill, dice);
  if (dice.next() < 0.2) drill.id = dice.one(idsOf({ catalogue }));
  return { request: "check-drill", drill, ...(dice.next() < 0.8 ? { instead_of } : {}), catalogue };
}

// bases: requests as the program saves them, by name. Gives {name, kind, request}.
export function variations(bases, count, seed) {
  const out = [];
  const names = Object.keys(bases).sort();
  for (let index = 0; index < count; index++) {
    const dice = new Dice(seed + index); // so that a part of them are the same ones
    const name = dice.one(names);
    const request = structuredClone(bases[name]);
    const of = `${String(index).padStart(3, "0")}-${name}`;
    const roll = dice.next();
    if (roll < 0.12) {
      out.push({ name: `varied-${of}-figure`, kind: "figure", request: figureOf(request, dice) });
      continue;
    }
    if (roll > 0.9) {
      out.push({ name: `varied-${of}-check`, kind: "check-drill", request: checkOf(request, dice) });
      continue;
    }
    const changes = dice.some(Object.keys(kChanges), 4);
    for (const change of changes) kChanges[change](request, dice);
    if (roll < 0.2) dice.one(kMistakes)(request, dice);
    if (roll > 0.8) request.request = "slip";
    out.push({ name: `varied-${of}`, kind: roll < 0.2 ? "mistaken" : request.request, changes, request });
  }
  return out;
}
