// An app that is older than the server: what it does not know it passes over; where it is too old it keeps everything and says so; the
// newer app waits while a session is running, takes over when the coach says so, and sends what waited.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { all, that } from "../serve/expect.mjs";
import { Server } from "../serve/server.mjs";
import { startTonight, tap } from "./hour.mjs";
import { everything } from "./paired.mjs";
import { PairedApp, passLock } from "./paired_app.mjs";
import { Way } from "./way.mjs";

const kTooOld = { path: /^\/api\/(sync|device)/, status: 426, body: { error: "update-first", what: "This app is too old for the club's server." } };

// As a server of next year might answer: a higher version, keys that nobody here knows, a kind that nobody here knows.
const newer = (body) => ({
  ...body, client: 2, weather: { tonight: "wet", wind: [1, 2] }, colour: null, notices: [{ kind: "tournament", text: "Sunday" }],
  ...(body.verdicts ? { verdicts: body.verdicts.map((one) => ({ ...one, seen_by: 3 })) } : {}),
  ...(body.evenings ? { evenings: body.evenings.map((one) => ({ ...one, referee: "nobody" })), songs: ["x"] } : {}),
});

const title = (page) => page.title();
const sendsAll = (page) => page.waitForFunction(() => document.querySelector(".sync-line")?.textContent.includes("Everything is with the club"), undefined, { timeout: 10000 });
const renewalOf = (page) => page.evaluate(async () => {
  const found = await navigator.serviceWorker.getRegistration();
  return { waits: found.waiting !== null, line: document.querySelector(".renewal-line") !== null };
});

async function done(page, times) {
  for (let time = 0; time < times; time++) {
    const before = await page.textContent("h1");
    await page.waitForTimeout(1000);
    await tap(page, "Done");
    await page.waitForFunction((old) => document.querySelector("h1")?.textContent !== old, before);
  }
}

// Keys and kinds of a newer server: the evening is planned and sent as if they were not there.
async function passedOver(context) {
  const app = await PairedApp.open(context, (server) => Way.open(server));
  try {
    app.between.set("alters", { path: /^\/api\/(sync|device)/, change: newer });
    const ofLead = app.people.device("lead");
    const { after: since } = await everything(ofLead);
    const { phone, page } = await app.paired();
    await startTonight(page);
    await done(page, 2);
    await tap(page, "End here");
    await tap(page, "Most");
    await tap(page, "Finish");
    await tap(page, "All evenings");
    await tap(page, "Send now");
    await sendsAll(page);
    const { seen } = await everything(ofLead, since);
    const week = await app.tonightOfTheWeek();
    const alert = await page.evaluate(() => document.querySelector("[role=alert]")?.textContent ?? "");
    return all(that(alert === "", alert), that(seen.size === 5 && [...seen.values()].every((same) => same.length === 1), `${[...seen.values()].map(([one]) => one.kind)}`),
      that(week?.did_it === "most", JSON.stringify(week)), that(phone.said.every((line) => !line.startsWith("error:")), phone.said.join("\n")));
  } finally {
    await app.end();
  }
}

async function tooOld(context) {
  const app = await PairedApp.open(context, (server) => Way.open(server));
  const folder = mkdtempSync(join(tmpdir(), "lanework-newer-"));
  try {
    const ofLead = app.people.device("lead");
    const { after: since } = await everything(ofLead);
    const { phone, page } = await app.paired();
    await startTonight(page);
    await done(page, 1);
    // The club's server is renewed in the middle of the session, and with it the app that it serves.
    await bundlePitchside(folder, { door: context.wasm, page: readFileSync("web/pitchside/shell/index.html", "utf8").replace("<title>Lanework</title>", "<title>Lanework newer</title>") });
    await app.server.stop();
    app.server = await Server.start(context.demo.program, app.server.folder, { flags: ["--web", folder, ...app.flags.slice(2)] });
    app.between.server = app.server;
    app.between.set("says", kTooOld);
    const sent = app.between.sent().length;
    await done(page, 1);
    await page.waitForFunction(async () => (await navigator.serviceWorker.getRegistration()).waiting !== null, undefined, { timeout: 15000, polling: 200 });
    const drill = await page.textContent("h1");
    await page.reload();
    await page.getByRole("button", { name: "Done", exact: true }).waitFor();
    const running = await renewalOf(page);
    const out = [that(app.between.sent().length > sent, "nothing was sent"),
      that((await title(page)) === "Lanework" && running.waits && !running.line && (await page.textContent("h1")) === drill, `while it runs: ${await title(page)}, ${JSON.stringify(running)}`)];
    await tap(page, "End here");
    await tap(page, "Half");
    await tap(page, "Finish");
    await tap(page, "All evenings");
    await tap(page, "Send now");
    await page.waitForFunction(() => document.querySelector(".sync-line [role=alert]") !== null);
    const line = await page.textContent(".sync-line");
    out.push(that(/newer version|too old|update/i.test(line) && !line.includes("Everything is with"), line));
    await page.click(".renewal-line button");
    await page.waitForFunction(() => document.title === "Lanework newer", undefined, { timeout: 10000 });
    app.between.set("through");
    await passLock(page);
    await page.waitForSelector(".sync-line");
    await tap(page, "Send now");
    await sendsAll(page);
    ofLead.server = app.server;
    app.lead.server = app.server;
    const { seen } = await everything(ofLead.as({ device: ofLead.device }), since);
    const kinds = [...seen.values()].map(([one]) => one.kind).sort().join();
    out.push(that(kinds === "attendance,drill-marked,drill-marked,session-started,wrap-up" && [...seen.values()].every((same) => same.length === 1), kinds));
    return all(out, that(phone.said.every((words) => !words.startsWith("error:")), phone.said.join("\n")));
  } finally {
    await app.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

export const staleApp = [
  { name: "an older app passes over what a newer server adds", run: passedOver, long: true },
  { name: "an app that is too old keeps everything, the newer one waits for the session's end", run: tooOld, long: true },
];
