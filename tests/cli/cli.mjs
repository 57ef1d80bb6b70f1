// The built program as its users meet it: commands, bad input, pages, approved texts, and answers against schema/.
import { timed } from "../../tools/suite/timed.mjs";
import { badInput } from "./bad_input.mjs";
import { billsOfMaterials } from "./bill_of_materials.mjs";
import { blocks } from "./block.mjs";
import { carePlayers } from "./care_players.mjs";
import { careClub } from "./care_club.mjs";
import { careMeasures } from "./care_measures.mjs";
import { careEvenings } from "./care_evenings.mjs";
import { careCatalogue } from "./care_catalogue.mjs";
import { careVenue } from "./care_venue.mjs";
import { clubFolder } from "./club_folder.mjs";
import { clubPages } from "./club_pages.mjs";
import { commands } from "./commands.mjs";
import { custody } from "./custody.mjs";
import { emphasis } from "./emphasis.mjs";
import { evidence } from "./evidence.mjs";
import { goldens } from "./golden.mjs";
import { ledger } from "./ledger.mjs";
import { pages } from "./pages.mjs";
import { releases } from "./release.mjs";
import { rolling } from "./rolling.mjs";
import { rollingStories } from "./rolling_stories.mjs";
import { seasons } from "./season.mjs";
import { schemaResults } from "./schemas.mjs";
import { weather } from "./weather.mjs";

async function resultOf(test, program) {
  try {
    const detail = await timed(test.name, () => test.run(program));
    return { name: `cli: ${test.name}`, passed: detail === "", detail };
  } catch (error) {
    return { name: `cli: ${test.name}`, passed: false, detail: error.stack };
  }
}

export const cli = {
  name: "cli",
  async run({ build }) {
    const program = `${process.cwd()}/${build}/lanework`;
    const results = [];
    const tests = [...commands, ...badInput, ...blocks, ...rolling, ...rollingStories, ...clubFolder, ...clubPages, ...pages, ...evidence, ...seasons, ...emphasis, ...weather, ...carePlayers, ...careMeasures, ...careEvenings, ...careVenue, ...careCatalogue, ...careClub, ...ledger, ...custody, ...releases, ...billsOfMaterials, ...goldens];
    for (const test of tests) results.push(await resultOf(test, program));
    return [...results, ...(await schemaResults(program, `${build}/tests/parity/native_door`))];
  },
};
