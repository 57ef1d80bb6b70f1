// A phone is paired: the lead opens a link and confirms the code by the API, the coach does the rest on the real app.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { bundlePitchside } from "../../tools/bundle_pitchside.mjs";
import { all, that } from "../serve/expect.mjs";
import { People } from "../serve/people.mjs";
import { chooseCode } from "./paired.mjs";
import { Phone } from "./phone.mjs";
import { Way } from "./way.mjs";

const kAxe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const kPictures = process.env.LANEWORK_PICTURES; // a folder for whoever wants to look

async function withApp({ demo, contract }, work) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-app-"));
  await bundlePitchside(folder);
  const server = await demo.serve({ flags: ["--web", folder] });
  const way = await Way.open(server);
  const people = new People(demo, server, contract);
  try {
    const lead = await people.signIn("lead");
    const coach = (await lead.get("/api/accounts")).json.accounts.find((one) => one.sign_in === "coach");
    const link = async () => (await lead.post("/api/pairings", { account: coach.account })).json;
    return await work({ server, way, people, lead, link, folder });
  } finally {
    way.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function picture(page, name) {
  if (kPictures) await page.screenshot({ path: join(kPictures, `${name}.png`) });
}

// What is on the screen: text from 18 px, targets from 48 px, nothing beside the screen, axe clean.
async function fit(page) {
  await page.evaluate(kAxe);
  return page.evaluate(async () => {
    const out = [];
    const { violations } = await window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
    for (const one of violations) out.push(`${one.id}: ${one.nodes[0].html}`);
    for (const one of document.querySelectorAll("p, h1, h2, li, label, button, input, summary, dd")) {
      const size = parseFloat(getComputedStyle(one).fontSize);
      if (size < 18) out.push(`${size} px: ${one.textContent}`);
    }
    for (const one of document.querySelectorAll("button, input, summary, a")) {
      const { width, height } = one.getBoundingClientRect();
      if (width < 48 || height < 48) out.push(`${width} by ${height}: ${one.outerHTML}`);
    }
    if (document.documentElement.scrollWidth > innerWidth) out.push("it goes beyond the screen");
    return out.join("\n");
  });
}

const confirmed = (lead, pairing, code) => lead.post(`/api/pairings/${pairing}/confirm`, { code });

async function endToEnd(context) {
  return withApp(context, async ({ server, way, lead, link }) => {
    const phone = await Phone.make();
    const opened = await link();
    const page = await phone.page(way.url);
    await page.waitForSelector(".pair-form");
    await picture(page, "pair-link");
    const out = [await fit(page)];
    await page.goto(`${way.url}/#pair=${opened.link}`);
    await page.waitForSelector(".pair-code");
    const code = (await page.textContent(".pair-code")).replace(/\D/g, "");
    await picture(page, "pair-code");
    out.push(await fit(page), that(!page.url().includes(opened.link), page.url()));
    await page.reload();
    await page.waitForSelector(".pair-code");
    out.push(that((await page.textContent(".pair-code")).replace(/\D/g, "") === code, "a reload has another code"));
    const said = await confirmed(lead, opened.pairing, code);
    await page.waitForSelector("main button:not([type=submit])");
    await picture(page, "pair-done");
    out.push(await fit(page), that(said.status === 201, said.text));
    await page.click("main button");
    await page.waitForSelector("#code-again");
    await picture(page, "pair-choose");
    out.push(await fit(page));
    await chooseCode(page);
    await page.waitForSelector(".sync-line");
    await page.waitForFunction(() => document.querySelector(".sync-line")?.textContent.includes("Last in touch"));
    await picture(page, "pair-home");
    out.push(await fit(page), that(!/role="alert"/.test(await page.innerHTML("main")), await page.textContent("main")));
    out.push(that(way.seen.every(({ path }) => !path.includes(opened.link)) && !server.log.includes(opened.link), "the link's secret was in an address or a log"));
    const devices = (await lead.get("/api/devices")).json.devices;
    out.push(that(devices.some(({ device }) => device === said.json.device), "no such device"), that(phone.said.every((line) => /status of 404/.test(line)), phone.said.join("\n")));
    return all(out);
  });
}

async function failures(context) {
  return withApp(context, async ({ way, lead, link }) => {
    const phone = await Phone.make();
    const page = await phone.page(way.url);
    const out = [];
    const tryLink = async (text) => {
      await page.fill("#pair-link", text);
      await page.click("button");
    };
    const says = async (words) => {
      await page.waitForFunction((wanted) => document.querySelector("[role=alert]")?.textContent.includes(wanted), words, { timeout: 6000 });
    };
    await tryLink("https://club.example/");
    await says("That is not a link");
    await tryLink("A".repeat(43));
    await says("That link was used before");
    way.set("cut");
    const late = await link();
    await tryLink(late.link);
    await says("cannot be reached");
    way.set("says", { path: /claim$/, status: 200, body: "<html>Welcome</html>" });
    await tryLink(late.link);
    await says("cannot be reached");
    way.set("through");
    // The same link on a second phone: neither is good.
    await tryLink(`${way.url}/#pair=${late.link}`);
    await page.waitForSelector(".pair-code");
    const code = (await page.textContent(".pair-code")).replace(/\D/g, "");
    const second = await phone.context.request.post(`${way.url}/api/pairings/claim`, { data: { link: late.link, label: "x" }, headers: { "Lanework-Request": "1" } });
    await says("opened on two phones");
    const said = await confirmed(lead, late.pairing, code);
    out.push(that(second.status() === 410, `${second.status()}`), that(said.status === 409, said.text));
    // In Spanish, and pasted whole.
    await picture(page, "pair-failed");
    out.push(await fit(page));
    return all(out);
  });
}

// Chromium's own private windows cannot all be told from others (notes say what was seen); no IndexedDB can.
async function refused(context) {
  return withApp(context, async ({ way, link }) => {
    const opened = await link();
    const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
    const see = async (script) => {
      const inside = await browser.newContext({ locale: "es-ES" });
      if (script) await inside.addInitScript(script);
      const page = await inside.newPage();
      await page.goto(`${way.url}/#pair=${opened.link}`);
      await page.waitForSelector("[role=alert], .pair-code");
      const text = await page.textContent("body");
      const { quota } = await page.evaluate(() => navigator.storage.estimate());
      await picture(page, "pair-refused");
      await inside.close();
      return { text, quota };
    };
    try {
      const without = await see(() => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("not here", "SecurityError");
        };
      });
      const closed = await see(() => {
        StorageManager.prototype.getDirectory = () => Promise.reject(new DOMException("not here", "SecurityError"));
      });
      const claims = way.seen.filter(({ path }) => path === "/api/pairings/claim").length;
      const plain = await see();
      return {
        detail: all(that(/no guarda nada/.test(without.text), without.text), that(/ventana privada/.test(closed.text), closed.text), that(claims === 0, "the link was used up")),
        note: `a private context of Chromium says ${Math.round(plain.quota / 1e6)} MB and was ${/ventana privada/.test(plain.text) ? "refused" : "not told from another"}`,
      };
    } finally {
      await browser.close();
    }
  });
}

export const pairs = [
  { name: "paired end to end, the secret in no address", run: endToEnd },
  { name: "links that are none, used up, or opened twice", run: failures },
  { name: "a window that keeps nothing is refused, and the link stays good", run: refused },
];
export { withApp, confirmed, fit, picture };
