// A whole evening on the real app (walk.mjs), of a club that has one tonight, on a server of its own.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { kDay } from "../serve/expect.mjs";
import { People } from "../serve/people.mjs";
import { clubOfToday } from "./club_of_today.mjs";
import { walk } from "./walk.mjs";
import { Way } from "./way.mjs";

const kPictures = process.env.LANEWORK_PICTURES;  // a folder for whoever wants to look

async function evening({ demo, contract, wasm }) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-evening-"));
  clubOfToday(join(folder, "club"), kDay);
  await bundlePitchside(join(folder, "app"), { door: wasm });
  const server = await demo.serve({ flags: ["--web", join(folder, "app"), "--plan-from", join(folder, "club")] });
  const way = await Way.open(server);
  try {
    const lead = await new People(demo, server, contract).signIn("lead");
    const picture = async (page, name) => kPictures && page.screenshot({ path: join(kPictures, `evening-${name}.png`) });
    return (await walk({ way, lead, day: kDay, squad: { id: "u13-kestrels", word: "Kestrels" }, picture })).join("\n");
  } finally {
    way.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

export const wholeEvening = [{ name: "a whole evening with no signal, a dead battery in the middle, and then the club has it", run: evening }];
