// A coach's phone as the desk's stories need it: the real app in a window of its own, paired by the lead's link and the digits,
// taken through an evening with no signal, and in touch again.
import { kDay, that } from "../serve/expect.mjs";
import { chooseCode, enterCode } from "../pitchside/paired.mjs";
import { qrFault } from "./qr.mjs";

const kWindow = { width: 360, height: 740 };
const kDoubleTapMilliseconds = 1000; // sooner than that after a drill came, a tap is a second one of the last

export class CoachesPhone {
  // The lead opens the link at the desk and types the digits that the phone shows. look: with each screen, by name.
  static async paired(desk, page, coach, look) {
    const phone = new CoachesPhone();
    phone.out = [];
    phone.look = (name) => look(name, phone.page);
    await desk.at("#/people", page);
    await page.getByRole("link", { name: coach, exact: true }).click();
    await page.getByRole("button", { name: "Open a link for a phone" }).click();
    const link = await page.getByLabel(/To open on the phone/).inputValue();
    phone.out.push(await qrFault(page, link, "story-pair"));
    phone.page = await desk.window({ viewport: kWindow });
    await phone.page.goto(link);
    await phone.page.waitForSelector(".pair-code");
    await phone.look("digits");
    const digits = (await phone.page.textContent(".pair-code")).replace(/\D/g, "");
    await page.getByLabel("The six digits that the phone shows").fill(digits);
    await look("pairing", page);
    await page.keyboard.press("Enter");
    await page.locator("dialog").getByText("Paired.").waitFor();
    await phone.page.waitForSelector("main button:not([type=submit])");
    await phone.page.click("main button");
    await chooseCode(phone.page);
    await phone.page.waitForSelector(".evenings .evening.main");
    await phone.page.evaluate(() => navigator.serviceWorker.ready);
    await phone.look("evenings");
    return phone;
  }

  tap(name) {
    return this.page.getByRole("button", { name, exact: true }).first().click();
  }

  pick(question, name) {
    return this.page.getByRole("group", { name: question }).getByRole("button", { name }).click();
  }

  signal(there) {
    return this.page.context().setOffline(!there);
  }

  // The app from what the phone has kept, and tonight's evening in it.
  async openTonight() {
    await this.page.reload();
    await enterCode(this.page);
    await this.page.locator(".evenings .evening.main").click();
    await this.page.getByRole("button", { name: "Lay out", exact: true }).waitFor();
    await this.page.waitForSelector("main svg");
  }

  async away(count) {
    for (let one = 0; one < count; one++) await this.tap("Players: Less");
  }

  async sore({ name, place }) {
    await this.page.locator("summary", { hasText: "Who is sore" }).click();
    await this.pick("Who?", new RegExp(name));
    await this.tap(place);
    await this.look("sore");
    await this.tap("Note it");
    await this.page.getByText("Swaps only, stop if it hurts.").waitFor();
    await this.look("tonight");
  }

  async run(drills) {
    await this.tap("Lay out");
    await this.look("lay-out");
    await this.tap("Start");
    await this.page.getByRole("button", { name: "Done", exact: true }).waitFor();
    for (let one = 0; one < drills; one++) {
      await this.page.waitForTimeout(kDoubleTapMilliseconds);
      const before = await this.page.textContent("h1");
      await this.tap("Done");
      await this.page.waitForFunction((old) => document.querySelector("h1")?.textContent !== old, before);
    }
    await this.look("run");
  }

  async hurt({ name, place }) {
    await this.tap("Someone is hurt");
    await this.tap("To the note");
    await this.pick("Who?", new RegExp(name));
    await this.tap(place);
    await this.look("hurt");
    await this.tap("Note it");
    await this.page.getByText("The player sits out tonight.", { exact: false }).waitFor();
    await this.tap("Back to the session");
  }

  async wrapUp() {
    await this.tap("End here");
    await this.tap("Most");
    await this.look("wrap-up");
    await this.tap("Finish");
    await this.page.getByText("Not yet. It waits on this phone for signal", { exact: false }).waitFor();
    await this.look("waits");
    await this.tap("All evenings");
  }

  async sends() {
    await this.tap("Send now");
    await this.page.waitForFunction(() => document.querySelector(".sync-line")?.textContent.includes("Everything is with the club"));
    await this.look("sent");
  }
}

// What the club has of tonight, by the lead's week.
export async function tonightFault(lead, squad, there) {
  const monday = new Date(Date.parse(kDay) - ((new Date(kDay).getUTCDay() + 6) % 7) * 86_400_000).toISOString().slice(0, 10);
  const { evenings } = (await lead.get(`/api/week/${monday}`)).json;
  const tonight = evenings.find((one) => one.squad === squad && one.day === kDay);
  return that(tonight?.there === there && tonight.did_it === "most", `of tonight the club has ${JSON.stringify(tonight)}`);
}
