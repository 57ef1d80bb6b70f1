// The drills in Spanish are no part of the shell: fetched once with signal, they are there without it.
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { all, kDay, that } from "../serve/expect.mjs";
import { People } from "../serve/people.mjs";
import { clubOfToday } from "./club_of_today.mjs";
import { Phone } from "./phone.mjs";
import { Way } from "./way.mjs";

async function spanish({ demo, contract, wasm }) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-spanish-"));
  clubOfToday(join(folder, "club"), kDay);
  await bundlePitchside(join(folder, "app"), { door: wasm });
  const file = `/${readdirSync(join(folder, "app")).find((name) => name.startsWith("drills-es-"))}`;
  const server = await demo.serve({ flags: ["--web", join(folder, "app"), "--plan-from", join(folder, "club")] });
  const way = await Way.open(server);
  const people = new People(demo, server, contract);
  const lead = await people.signIn("lead");
  const coach = (await lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
  const opened = (await lead.post("/api/pairings", { account: coach.account })).json;
  const phone = await Phone.make({ timezoneId: "Europe/Berlin", locale: "es-ES" });
  const out = [];
  const drills = async (page) => {
    await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().click();
    await page.getByText("Los ejercicios", { exact: true }).click();
    await page.getByText("Vueltas suaves a la calle", { exact: true }).waitFor({ timeout: 15000 });
  };
  try {
    let page = await phone.page(`${way.url}/#pair=${opened.link}`);
    await page.waitForSelector(".pair-code");
    await lead.post(`/api/pairings/${opened.pairing}/confirm`, { code: (await page.textContent(".pair-code")).replace(/\D/g, "") });
    await page.waitForSelector("main button:not([type=submit])");
    await page.click("main button");
    await page.locator(".evenings .evening", { hasText: "Kestrels" }).first().waitFor();
    out.push(that(!way.seen.some(({ path }) => path === file), "the shell's installing fetched the drills in Spanish"));
    await drills(page);
    await page.waitForFunction(async (path) => (await caches.match(path)) !== undefined, file);
    way.set("cut");
    await phone.kill();
    await phone.open();
    page = await phone.page(way.url);
    await drills(page);
  } catch (error) {
    out.push(`${error.stack}\n${phone.said.join("\n")}`);
  } finally {
    await phone.remove();
    way.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
  return all(out);
}

export const spanishOffline = [{ name: "the drills in Spanish are there without signal once they were fetched", run: spanish, long: true }];
