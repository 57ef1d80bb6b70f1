// One evening on the real app, as a coach goes through it: paired with signal, then none from Tonight to Wrap up, and with
// signal again the club has it. The browser dies in the middle and the session goes on at its drill.
import { that } from "../serve/expect.mjs";
import { lockedAfter, lockedOnTonight, notLockedInRun } from "./locked_app.mjs";
import { chooseCode, enterCode } from "./paired.mjs";
import { fit } from "./pairs.mjs";
import { Phone } from "./phone.mjs";

const kWeeks = 3;  // that a phone may have evenings of
const kDayMilliseconds = 86_400_000;

function mondays(day) {
  const first = Date.parse(day) - ((new Date(day).getUTCDay() + 6) % 7) * kDayMilliseconds;
  return Array.from({ length: kWeeks }, (_, week) => new Date(first + 7 * week * kDayMilliseconds).toISOString().slice(0, 10));
}

// The evenings that the club knows to have begun, by squad, day and start.
async function begun(lead, day, squad) {
  const found = new Map();
  for (const monday of mondays(day)) {
    for (const one of (await lead.get(`/api/week/${monday}`)).json.evenings) {
      if (one.squad === squad && one.started) found.set(`${one.day} ${one.start}`, one);
    }
  }
  return found;
}

// way: between the phone and the server (way.mjs). squad: {id, word}, the word by which the list is read. picture: what
// is done with each screen, by name. What is not as it should be; empty: all is well.
export async function walk({ way, lead, day, squad, picture }) {
  const coach = (await lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
  const opened = (await lead.post("/api/pairings", { account: coach.account })).json;
  const before = await begun(lead, day, squad.id);
  const phone = await Phone.make({ timezoneId: "Europe/Berlin" });
  const out = [];
  let page = await phone.page(`${way.url}/#pair=${opened.link}`);
  const tap = (name, exact = true) => page.getByRole("button", { name, exact }).first().click();
  const take = (name) => picture(page, name);
  try {
    await page.waitForSelector(".pair-code");
    await lead.post(`/api/pairings/${opened.pairing}/confirm`, { code: (await page.textContent(".pair-code")).replace(/\D/g, "") });
    await page.waitForSelector("main button:not([type=submit])");
    await page.click("main button");
    await chooseCode(page);
    await page.locator(".evenings .evening", { hasText: squad.word }).first().waitFor();
    await page.waitForFunction(() => navigator.serviceWorker?.controller ?? navigator.serviceWorker?.ready);
    await take("list");
    out.push(await fit(page));

    way.set("cut");
    await page.reload();  // from the shell's own store
    await enterCode(page);
    await page.waitForSelector(".evenings .evening");
    const isToday = (await page.locator(".evenings .evening", { hasText: squad.word }).first().textContent()).includes("Tonight");
    await page.locator(".evenings .evening", { hasText: squad.word }).first().click();
    await page.getByRole("button", { name: "Lay out", exact: true }).waitFor();
    await page.waitForSelector("svg");
    await take("tonight");
    out.push(that(/\d\d:\d\d/.test(await page.textContent("main")), await page.textContent("main")));
    out.push(await lockedOnTonight(page, take));
    await tap("Lay out");
    await take("lay-out");
    await tap("Start");
    await page.getByRole("button", { name: "Done", exact: true }).waitFor();
    await page.waitForTimeout(1200);  // a tap sooner than a second after the drill came is a second one of the last
    await take("run");
    const drill = () => page.textContent("h1");
    const first = await drill();
    await tap("Done");
    await page.waitForFunction((before) => document.querySelector("h1")?.textContent !== before, first);
    const second = await drill();
    await page.waitForTimeout(1200);
    out.push(await notLockedInRun(page));

    await phone.kill();
    await phone.open();
    page = await phone.page(way.url);
    await page.getByRole("button", { name: "Done", exact: true }).waitFor();
    out.push(that((await drill()) === second, `it went on at '${await drill()}', not at '${second}'`));
    await take("resumed");
    await tap("Skip");
    await tap("End here");
    await page.getByRole("button", { name: "Most", exact: true }).waitFor();
    await take("wrap-up");
    await tap("Most");
    await tap("Finish");
    await take("finished");
    out.push(await lockedAfter(page));

    way.set("through");
    await tap("All evenings");
    const listed = async () => (await page.locator(".evenings .evening", { hasText: squad.word }).first().textContent()).includes("Written down");
    out.push(that((await listed()) === isToday, `the list ${isToday ? "asks for what is written down" : "says of another day that it is written down"}`));
    await tap("Send now");
    await page.waitForFunction(() => document.querySelector(".sync-line")?.textContent.includes("Everything is with the club"));
    await take("sent");
    const news = [...(await begun(lead, day, squad.id))].filter(([key]) => !before.has(key)).map(([, one]) => one);
    out.push(that(news.length === 1 && news[0].did_it === "most" && news[0].there > 0, JSON.stringify(news)));
    out.push(that(phone.said.every((line) => !line.startsWith("error:")), phone.said.join("\n")));
    const { quarantine = [] } = (await lead.get("/api/quarantine")).json;
    out.push(that(quarantine.length === 0, JSON.stringify(quarantine).slice(0, 300)));
  } catch (error) {
    await take("failed");
    out.push(`${error.stack}\n${phone.said.join("\n")}\n${(await page.textContent("body").catch(() => "")).slice(0, 600)}`);
  } finally {
    await phone.remove();
  }
  return out.filter((line) => line !== "");
}
