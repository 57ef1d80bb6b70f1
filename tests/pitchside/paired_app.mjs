// The real app on the real server, with an evening today: what the tests of whole evenings begin with.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { kDay } from "../serve/expect.mjs";
import { People } from "../serve/people.mjs";
import { clubOfToday } from "./club_of_today.mjs";
import { Phone } from "./phone.mjs";

export const kMonday = new Date(Date.parse(kDay) - ((new Date(kDay).getUTCDay() + 6) % 7) * 86_400_000).toISOString().slice(0, 10);

const kCode = "482913";

// Past the app's lock, where it has one: a code is chosen after pairing, and asked for where no session runs.
export async function passLock(page) {
  await page.waitForSelector(".evenings .evening, #code, .clock");
  if ((await page.locator("#code").count()) === 0) return;
  await page.fill("#code", kCode);
  if ((await page.locator("#code-again").count()) > 0) await page.fill("#code-again", kCode);
  await page.locator("form button[type=submit]").click();
  await page.waitForSelector("#code", { state: "detached" });
}

export class PairedApp {
  // between: opens what stands between phones and server, with an address `url`.
  static async open({ demo, contract, wasm }, between) {
    const app = new PairedApp();
    app.folder = mkdtempSync(join(tmpdir(), "lanework-app-"));
    app.start = clubOfToday(join(app.folder, "club"), kDay);
    app.files = await bundlePitchside(join(app.folder, "app"), { door: wasm });
    app.flags = ["--web", join(app.folder, "app"), "--plan-from", join(app.folder, "club")];
    app.server = await demo.serve({ flags: app.flags });
    app.between = await between(app.server);
    app.people = new People(demo, app.server, contract);
    app.lead = await app.people.signIn("lead");
    app.coach = (await app.lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
    app.phones = [];
    return app;
  }

  async phone(options = {}) {
    const phone = await Phone.make({ timezoneId: "Europe/Berlin", ...options });
    this.phones.push(phone);
    return phone;
  }

  // A phone that is paired and has its evenings and its shell; its page shows the list.
  async paired(options) {
    const phone = await this.phone(options);
    const opened = (await this.lead.post("/api/pairings", { account: this.coach.account })).json;
    const page = await phone.page(`${this.between.url}/#pair=${opened.link}`);
    await page.waitForSelector(".pair-code");
    await this.lead.post(`/api/pairings/${opened.pairing}/confirm`, { code: (await page.textContent(".pair-code")).replace(/\D/g, "") });
    await page.waitForSelector("main button:not([type=submit])");
    await page.click("main button");
    await passLock(page);
    await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready);
    return { phone, page };
  }

  // Tonight's evening of the squad as the lead's week has it.
  async tonightOfTheWeek() {
    const { evenings } = (await this.lead.get(`/api/week/${kMonday}`)).json;
    return evenings.find((one) => one.squad === "u13-kestrels" && one.day === kDay && one.start === this.start);
  }

  async end() {
    for (const phone of this.phones) await phone.remove();
    this.between?.close();
    await this.server.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
