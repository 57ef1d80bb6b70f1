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
