// What most tests begin with: a server that serves the harness, the way to it, a phone paired with the demo's coach.
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { pair } from "../serve/every_route.mjs";
import { People } from "../serve/people.mjs";
import { Phone } from "./phone.mjs";
import { Way } from "./way.mjs";

export const kCode = "482913"; // the coach's, as harness.ts has it

// The coach chooses the code, on the real app.
export async function chooseCode(page) {
  await page.waitForSelector("#code-again");
  await page.fill("#code", kCode);
  await page.fill("#code-again", kCode);
  await page.click("button[type=submit]");
  await page.waitForSelector("#code-again", { state: "detached" });
}

export async function enterCode(page, code = kCode) {
  await page.waitForSelector("#code");
  await page.fill("#code", code);
  await page.click("button[type=submit]");
}

export const kPage = '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>harness</title><script type="module" src="/{main}"></script></head><body></body></html>';

export async function harnessFolder() {
  const folder = mkdtempSync(join(tmpdir(), "lanework-harness-"));
  await bundlePitchside(folder, { entry: "tests/pitchside/harness.ts", page: kPage });
  return folder;
}

// Everything that the lead may see from a receipt on, by id, with how often it came; and the last receipt.
export async function everything(lead, since = 0) {
  const seen = new Map();
  let after = since;
  for (let more = true; more;) {
    const { json } = await lead.post("/api/sync", { client: 1, after });
    for (const one of json.entries) seen.set(one.id, [...seen.get(one.id) ?? [], one]);
    ({ after, more } = json);
  }
  return { seen, after };
}

export async function pairedPhone({ demo, contract, web }) {
  const server = await demo.serve({ flags: ["--web", web], mayRestart: true });
  const way = await Way.open(server);
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const coach = (await lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
  const { claimed, confirmed, caller } = await pair(lead, people, coach.account);
  const device = confirmed.json.device;
  const phone = await Phone.make();
  const page = await phone.lane(way.url);
  await page.evaluate(([secret, id]) => window.lane.paired(secret, id), [claimed.json.secret, device]);
  const ofLead = people.device("lead");
  const { after: since } = await everything(ofLead); // what the demo's season has
  return {
    demo, contract, server, way, people, lead, phone, page, device, caller, ofLead, since,
    books: (of = page) => of.evaluate(() => ({ ...window.lane.keep.books.value, ...window.lane.sync.status.value, writes: window.lane.keep.writes.value })),
    async run(of = page) {
      await of.evaluate(() => window.lane.sync.run());
      return this.books(of);
    },
    seen: async (of = ofLead) => (await everything(of, since)).seen,
    async end() {
      await phone.remove();
      way.close();
      await server.stop();
    },
  };
}

// A test over a paired phone.
export const onPhone = (name, work) => ({
  name,
  async run(context) {
    const set = await pairedPhone(context);
    try {
      return await work(set, context);
    } finally {
      await set.end();
    }
  },
});
