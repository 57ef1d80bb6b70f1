// The pictures of the coach's guide: an evening on the real app, from the list to what was written down.
import { chooseCode } from "../../tests/pitchside/paired.mjs";
import { Phone } from "../../tests/pitchside/phone.mjs";

const kSize = { width: 412, height: 860 };
const kTooSoonMilliseconds = 1300; // a tap sooner after a drill came is a second one of the last

async function paired(demo, url, moment) {
  const coach = (await demo.lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
  const opened = (await demo.lead.post("/api/pairings", { account: coach.account })).json;
  const phone = await Phone.make({ viewport: kSize, timezoneId: "Europe/Berlin", reducedMotion: "reduce", deviceScaleFactor: 1 });
  const page = await phone.context.newPage();
  await page.clock.install({ time: new Date(moment) });
  await page.goto(`${url}/#pair=${opened.link}`);
  await page.waitForSelector(".pair-code");
  await demo.lead.post(`/api/pairings/${opened.pairing}/confirm`, { code: (await page.textContent(".pair-code")).replace(/\D/g, "") });
  await page.waitForSelector("main button:not([type=submit])");
  await page.click("main button");
  await chooseCode(page);
  await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().waitFor();
  return { phone, page };
}

// take(name, page): keeps the picture.
export async function phonePictures(demo, url, moment, take) {
  const { phone, page } = await paired(demo, url, moment);
  const tap = (name) => page.getByRole("button", { name, exact: true }).first().click();
  await take("phone-evenings", page);
  await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().click();
  await page.getByRole("button", { name: "Lay out", exact: true }).waitFor();
  await page.waitForSelector("main svg");
  await tap("Not now");
  await page.waitForFunction(() => /nine nights in ten/.test(document.body.textContent));
  await take("phone-tonight", page);
  await tap("Partners and swaps");
  await page.getByRole("heading", { name: "Partners and swaps" }).waitFor();
  await page.waitForFunction(() => !/Planning/.test(document.body.textContent));
  await take("phone-slip", page);
  await tap("Close");
  await tap("Lay out");
  await page.getByRole("button", { name: "Start", exact: true }).waitFor();
  await take("phone-lay-out", page);
  await tap("Start");
  const drill = () => page.textContent("h1");
  for (let nth = 0; nth < 6; nth++) {
    const before = await drill();
    await page.waitForTimeout(kTooSoonMilliseconds);
    await tap("Done");
    await page.waitForFunction((was) => document.querySelector("h1")?.textContent !== was, before);
  }
  await page.waitForSelector(".figure svg");
  await page.waitForTimeout(kTooSoonMilliseconds);
  await take("phone-run", page);
  await tap("Someone is hurt");
  await page.getByRole("heading", { name: "Someone is hurt" }).waitFor();
  await take("phone-hurt", page);
  await tap("Back to the session");
  await tap("End here");
  await page.getByRole("button", { name: "Most", exact: true }).waitFor();
  await tap("Most");
  await take("phone-wrap-up", page);
  await tap("Finish");
  await page.getByText("Written down.").first().waitFor();
  await take("phone-written", page);
  await phone.remove();
}
