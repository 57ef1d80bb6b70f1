// Two phones of one squad, both without signal, both record the same evening; then they are in touch again, in either order. Both accounts
// are kept, none twice, and the lead's week says that two people wrapped it up.
import { all, that } from "../serve/expect.mjs";
import { startTonight, tap } from "./hour.mjs";
import { everything } from "./paired.mjs";
import { PairedApp } from "./paired_app.mjs";
import { Way } from "./way.mjs";

const kSent = "Everything is with the club";

// One coach's evening: two drills done, one skipped, somebody hurt, and how it went in their own view.
async function record(page, { player, place, did_it }) {
  await startTonight(page);
  const heading = () => page.textContent("h1");
  for (const what of ["Done", "Done", "Skip"]) {
    const before = await heading();
    await page.waitForTimeout(1000);
    await tap(page, what);
    await page.waitForFunction((old) => document.querySelector("h1")?.textContent !== old, before);
  }
  await tap(page, "Someone is hurt");
  await page.getByRole("group", { name: "Who?" }).getByRole("button").nth(player).click();
  await tap(page, place);
  await tap(page, "Note it");
  await tap(page, "Back to the session");
  await tap(page, "End here");
  await tap(page, did_it);
  await tap(page, "Finish");
  await tap(page, "All evenings");
}

async function sends(page) {
  await tap(page, "Send now");
  await page.waitForFunction((words) => document.querySelector(".sync-line")?.textContent.includes(words), kSent);
}

// In which the second phone is another person's: the demo's substitute would have this evening too, but two coaches are the usual case.
async function pairAnother(app) {
  const added = (await app.lead.post("/api/accounts", { sign_in: `second-${app.phones.length}`, name: "Second coach", role: "coach", charges: [{ squad: "u13-kestrels" }] })).json;
  const first = app.coach;
  app.coach = { account: added.account };
  const paired = await app.paired();
  app.coach = first;
  return paired;
}

const count = (entries, kind) => entries.filter((one) => one.kind === kind).length;

async function recorded(context, reverse) {
  const app = await PairedApp.open(context, (server) => Way.open(server));
  try {
    const ofLead = app.people.device("lead");
    const { after: since } = await everything(ofLead);
    const phones = [await app.paired(), await pairAnother(app)];
    app.between.set("cut");
    await record(phones[0].page, { player: 3, place: "Knee", did_it: "Most" });
    await record(phones[1].page, { player: 6, place: "Ankle", did_it: "Half" });
    app.between.set("through");
    for (const { page } of reverse ? [...phones].reverse() : phones) await sends(page);
    for (const { page } of phones) await sends(page); // again: nothing is doubled
    const { seen } = await everything(ofLead, since);
    const entries = [...seen.values()].map(([one]) => one);
    const said = entries.map(({ kind, did_it, place }) => `${kind} ${did_it ?? place ?? ""}`).join(", ");
    const week = await app.tonightOfTheWeek();
    const aside = (await app.lead.get("/api/quarantine")).json.kept_aside;
    return all(
      that([...seen.values()].every((same) => same.length === 1), "an entry came twice"),
      that(["session-started", "attendance", "wrap-up", "hurt"].every((kind) => count(entries, kind) === 2) && count(entries, "drill-marked") === 6, said),
      that(new Set(entries.filter(({ kind }) => kind === "wrap-up").map(({ did_it }) => did_it)).size === 2, said),
      that(week?.wrapped_up_by_two === true, `the lead's week: ${JSON.stringify(week)}`),
      that(aside.length === 0, JSON.stringify(aside).slice(0, 300)),
      that(phones.every(({ phone }) => phone.said.every((line) => !line.startsWith("error:"))), phones.flatMap(({ phone }) => phone.said).join("\n")),
    );
  } finally {
    await app.end();
  }
}

export const twoPhones = [
  { name: "two phones record one evening without signal: both are kept, the lead is told", run: (context) => recorded(context, false) },
  { name: "two phones, the second in touch first", run: (context) => recorded(context, true), long: true },
];
