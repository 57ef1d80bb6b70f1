// The lead's desk in Chromium on the real server with the demo's season: its frame, and each screen's main task.
// LANEWORK_ONLY='pattern' runs the tests whose names fit, those of the long run too; LANEWORK_PICTURES=FOLDER keeps pictures.
import { calendarLink } from "./calendar_link.mjs";
import { coaches } from "./coaches.mjs";
import { copiesOfBooks } from "./copies_of_books.mjs";
import { drills } from "./drills.mjs";
import { evidence } from "./evidence.mjs";
import { frame } from "./frame.mjs";
import { fromPitchToCard } from "./from_pitch_to_card.mjs";
import { hostileTyped } from "./hostile_typed.mjs";
import { injuries } from "./injuries_screen.mjs";
import { openHouse } from "./harness.mjs";
import { ownAccount } from "./own_account.mjs";
import { people } from "./people.mjs";
import { releases } from "./releases.mjs";
import { seasonTurn } from "./season_turn.mjs";
import { setUp } from "./set_up.mjs";
import { setUpHostile } from "./set_up_hostile.mjs";
import { setUpStopped } from "./set_up_stopped.mjs";
import { squadKeeps } from "./squad_keeps.mjs";
import { squad } from "./squad_screen.mjs";
import { tenMinutesTests } from "./ten_minutes.mjs";
import { timed } from "../../tools/suite/timed.mjs";
import { week } from "./week_screen.mjs";

const kTests = [...frame, ...ownAccount, ...week, ...squad, ...calendarLink, ...squadKeeps, ...fromPitchToCard, ...injuries, ...drills, ...people, ...copiesOfBooks, ...coaches, ...evidence, ...releases, ...setUp, ...setUpHostile, ...setUpStopped, ...hostileTyped, ...seasonTurn, ...tenMinutesTests];

const kBeside = 2; // tests at a time: much of each is waiting

async function resultOf(test, house) {
  let said;
  try {
    said = await timed(test.name, () => test.run(house));
  } catch (error) {
    said = error.stack;
  }
  const { detail, note } = typeof said === "string" ? { detail: said } : said;
  return { name: `desk: ${test.name}`, passed: detail === "", detail, note };
}

export const desk = {
  name: "desk",
  async run(context) {
    const only = process.env.LANEWORK_ONLY;
    const tests = kTests.filter((test) => (only ? new RegExp(only).test(test.name) : context.mode === "long" || !test.long));
    const house = await openHouse(context);
    const results = [];
    try {
      const waiting = [...tests.entries()];
      const lane = async () => {
        for (let next = waiting.shift(); next; next = waiting.shift()) results[next[0]] = await resultOf(next[1], house);
      };
      await Promise.all(Array.from({ length: kBeside }, lane));
    } finally {
      await house.close();
    }
    return results;
  },
};
