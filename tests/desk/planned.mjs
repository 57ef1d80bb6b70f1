// The demo's squads, planned by the server's own worker.
import { pause } from "../serve/server.mjs";

const kMostMilliseconds = 60_000;

// squads: all where none are named.
export async function planned({ caller }, squads) {
  await caller.post("/api/plans", squads ? { squads } : {});
  for (const until = Date.now() + kMostMilliseconds; Date.now() < until; await pause(250)) {
    const { jobs } = (await caller.get("/api/planning")).json;
    const failed = jobs.find(({ state }) => state === "failed");
    if (failed) throw new Error(`${failed.squad} was not planned: ${failed.why}`);
    if (jobs.every(({ state }) => state === "done")) return;
  }
  throw new Error("the plans are not made in a minute");
}

// As long as a session has no route of its own for a squad's evenings, the page gets what the lead's paired device is given:
// the server's real answer by the way that there is.
export async function eveningsByDevice({ page, people }) {
  const device = people.device("lead");
  await page.route("**/api/squads/*/evenings", async (route) => {
    const path = new URL(route.request().url()).pathname.replace("/api/squads/", "/api/device/squads/");
    const { status, text } = await device.get(path);
    await route.fulfill({ status, contentType: "application/json", body: text });
  });
}
