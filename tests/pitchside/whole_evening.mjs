// A whole evening on the real app: paired with signal, then none from Tonight to Wrap up, and with signal again the
// club has it. The browser dies in the middle and the session goes on at its drill.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { all, kDay, that } from "../serve/expect.mjs";
import { People } from "../serve/people.mjs";
import { clubOfToday } from "./club_of_today.mjs";
import { lockedAfter, lockedOnTonight, notLockedInRun } from "./locked_app.mjs";
import { chooseCode, enterCode } from "./paired.mjs";
import { fit } from "./pairs.mjs";
import { Phone } from "./phone.mjs";
import { Way } from "./way.mjs";

const kPictures = process.env.LANEWORK_PICTURES;  // a folder for whoever wants to look

async function evening({ demo, contract, wasm }) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-evening-"));
  const start = clubOfToday(join(folder, "club"), kDay);
  await bundlePitchside(join(folder, "app"), { door: wasm });
  const server = await demo.serve({ flags: ["--web", join(folder, "app"), "--plan-from", join(folder, "club")] });
  const way = await Way.open(server);
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const coach = (await lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
  const opened = (await lead.post("/api/pairings", { account: coach.account })).json;
  const phone = await Phone.make({ timezoneId: "Europe/Berlin" });
  const out = [];
  let page = await phone.page(`${way.url}/#pair=${opened.link}`);
  const tap = (name, exact = true) => page.getByRole("button", { name, exact }).first().click();
  const picture = async (name) => kPictures && page.screenshot({ path: join(kPictures, `evening-${name}.png`) });
  try {
    await page.waitForSelector(".pair-code");
    await lead.post(`/api/pairings/${opened.pairing}/confirm`, { code: (await page.textContent(".pair-code")).replace(/\D/g, "") });
    await page.waitForSelector("main button:not([type=submit])");
    await page.click("main button");
    await chooseCode(page);
    await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().waitFor();
    await page.waitForFunction(() => navigator.serviceWorker?.controller ?? navigator.serviceWorker?.ready);
    await picture("list");
    out.push(await fit(page));

    way.set("cut");
    await page.reload();  // from the shell's own store
    await enterCode(page);
    await page.waitForSelector(".evenings .evening");
    await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().click();
    await page.getByRole("button", { name: "Lay out", exact: true }).waitFor();
    await page.waitForSelector("svg");
    await picture("tonight");
    out.push(that(/18:\d\d/.test(await page.textContent("main")), await page.textContent("main")));
    out.push(await lockedOnTonight(page, picture));
    await tap("Lay out");
    await picture("lay-out");
    await tap("Start");
    await page.getByRole("button", { name: "Done", exact: true }).waitFor();
    await page.waitForTimeout(1200);  // a tap sooner than a second after the drill came is a second one of the last
    await picture("run");
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
    await picture("resumed");
    await tap("Skip");
    await tap("End here");
    await page.getByRole("button", { name: "Most", exact: true }).waitFor();
    await picture("wrap-up");
    await tap("Most");
    await tap("Finish");
    await picture("finished");
    out.push(await lockedAfter(page));

    way.set("through");
    await tap("All evenings");
    await tap("Send now");
    await page.waitForFunction(() => document.querySelector(".sync-line")?.textContent.includes("Everything is with the club"));
    await picture("sent");
    const monday = new Date(Date.parse(kDay) - ((new Date(kDay).getUTCDay() + 6) % 7) * 86_400_000).toISOString().slice(0, 10);
    const { evenings } = (await lead.get(`/api/week/${monday}`)).json;
    const there = evenings.find((one) => one.squad === "u13-kestrels" && one.day === kDay && one.start === start);
    out.push(that(there?.started === true && there.did_it === "most" && there.there > 0, JSON.stringify(there)));
    out.push(that(phone.said.every((line) => !line.startsWith("error:")), phone.said.join("\n")));
    const { quarantine = [] } = (await lead.get("/api/quarantine")).json;
    out.push(that(quarantine.length === 0, JSON.stringify(quarantine).slice(0, 300)));
  } catch (error) {
    await picture("failed");
    out.push(`${error.stack}\n${phone.said.join("\n")}\n${(await page.textContent("body").catch(() => "")).slice(0, 600)}`);
  } finally {
    await phone.remove();
    way.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
  return all(out);
}

export const wholeEvening = [{ name: "a whole evening with no signal, a dead battery in the middle, and then the club has it", run: evening }];
