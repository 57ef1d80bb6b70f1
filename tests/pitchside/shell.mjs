// The shell: opens without signal, holds no data, and changes to a newer version only when it is told that it may.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlePitchside, sizesOf } from "../../tools/bundle_pitchside.mjs";
import { all, that } from "../serve/expect.mjs";
import { Server } from "../serve/server.mjs";
import { Phone } from "./phone.mjs";
import { chooseCode, enterCode } from "./paired.mjs";
import { confirmed, withApp } from "./pairs.mjs";

async function pairedApp({ way, lead, link }) {
  const phone = await Phone.make();
  const opened = await link();
  const page = await phone.page(`${way.url}/#pair=${opened.link}`);
  await page.waitForSelector(".pair-code");
  await confirmed(lead, opened.pairing, (await page.textContent(".pair-code")).replace(/\D/g, ""));
  await page.waitForSelector("main button:not([type=submit])");
  await page.click("main button");
  await chooseCode(page);
  await page.waitForSelector(".sync-line");
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return { phone, page };
}

// What has a path: what lies beside it by brotli has none of its own.
const filesOf = (folder) => readdirSync(folder).filter((name) => !name.endsWith(".br"));

const cached = (page) => page.evaluate(async () => {
  const out = [];
  for (const name of await caches.keys()) {
    for (const request of await (await caches.open(name)).keys()) out.push(new URL(request.url).pathname);
  }
  return { names: await caches.keys(), paths: out.sort() };
});

async function offline(context) {
  return withApp(context, async (app) => {
    const { phone, page } = await pairedApp(app);
    await page.click(".sync-line button");
    await page.waitForFunction(() => document.querySelector(".sync-line")?.textContent.includes("Last in touch"));
    const held = await cached(page);
    const files = filesOf(app.folder).filter((name) => name !== "service-worker.js" && !name.startsWith("drills-")).map((name) => `/${name}`).sort();
    const out = [that(held.paths.join() === files.join() && held.names.length === 1, `the caches hold ${held.paths}`)];
    app.way.set("cut");
    await phone.kill();
    await phone.open();
    app.way.seen.length = 0;
    const from = Date.now();
    const again = await phone.page(`${app.way.url}/any/where?x=1`);
    await again.waitForSelector(".sync-line");
    const took = Date.now() - from;
    await again.waitForFunction(() => document.querySelector(".sync-line [role=alert]")?.textContent.includes("No signal"));
    const type = await again.evaluate(() => document.fonts.ready.then(() => document.fonts.check("700 18px B612")));
    // Chromium asks for the page itself while the worker wakes up; nothing else of the shell is asked for.
    out.push(that(type, "the type is not there"), that(app.way.seen.every(({ path }) => path.startsWith("/api/") || path === "/service-worker.js" || path.startsWith("/any")), JSON.stringify(app.way.seen)));
    return { detail: all(out), note: `opened without signal in ${took} ms after the browser was killed` };
  });
}

// What a coach reads whose phone was revoked.
async function lostRight(context) {
  return withApp(context, async (app) => {
    const { page } = await pairedApp(app);
    const devices = (await app.lead.get("/api/devices")).json.devices;
    const ours = devices.find(({ label }) => label.startsWith("Linux"));
    const said = await app.lead.post(`/api/devices/${ours.device}/revoke`);
    await page.waitForFunction(() => {
      window.dispatchEvent(new Event("online"));
      return document.querySelector(".pair-form") !== null;
    }, undefined, { polling: 500, timeout: 10000 });
    const text = await page.textContent("main");
    if (process.env.LANEWORK_PICTURES) await page.screenshot({ path: join(process.env.LANEWORK_PICTURES, "revoked.png") });
    return all(that(said.status === 200, said.text), that(/no longer part of the club/.test(text), text));
  });
}

async function renewed(context) {
  return withApp(context, async (app) => {
    const { page } = await pairedApp(app);
    const before = await cached(page);
    const newer = mkdtempSync(join(tmpdir(), "lanework-newer-"));
    try {
      const changed = join(newer, "index.html");
      await bundlePitchside(newer, { page: readFileSync("web/pitchside/shell/index.html", "utf8").replace("<title>Lanework</title>", "<title>Lanework newer</title>") });
      await app.server.stop();
      const second = await Server.start(context.demo.program, app.server.folder, { flags: ["--web", newer] });
      app.way.server = second;
      // The newer server takes nothing from this app any more: the app says so and looks for its newer self.
      app.way.set("says", { path: /sync$/, status: 426, body: { error: "update-first", what: "This app is too old." } });
      await page.click(".sync-line button");
      await page.waitForFunction(() => document.querySelector(".sync-line [role=alert]")?.textContent.includes("too old"), undefined, { timeout: 10000 });
      await page.waitForSelector(".renewal-line button", { timeout: 15000 });
      await page.reload();
      const waits = await page.evaluate(async () => ({ title: document.title, waits: (await navigator.serviceWorker.getRegistration()).waiting !== null }));
      const out = [that(waits.title === "Lanework" && waits.waits, `it did not wait: ${JSON.stringify(waits)}`), that(readFileSync(changed, "utf8").includes("newer"), "no newer one")];
      await enterCode(page);
      await page.click(".renewal-line button");
      await page.waitForFunction(() => document.title === "Lanework newer", undefined, { timeout: 5000 });
      await enterCode(page);
      await page.waitForFunction(async () => (await caches.keys()).length === 1, undefined, { timeout: 5000 });
      app.way.set("through");
      await page.click(".sync-line button");
      await page.waitForFunction(() => !document.querySelector(".sync-line [role=alert]"), undefined, { timeout: 10000 });
      const after = await cached(page);
      out.push(that(after.names[0] !== before.names[0], `${before.names} and then ${after.names}`), that(await page.isVisible(".sync-line"), "it is no longer paired"));
      await second.stop();
      return all(out);
    } finally {
      rmSync(newer, { recursive: true, force: true });
    }
  });
}

// What the server calls hashed, it lets browsers keep for a year; the others are asked for each time.
async function names(context) {
  return withApp(context, async ({ way, folder }) => {
    const out = [];
    for (const name of filesOf(folder)) {
      const answer = await fetch(`${way.url}/${name}`);
      const hashed = /-[0-9a-f]{10}\.\w+$/.test(name);
      out.push(that(answer.status === 200 && answer.headers.get("cache-control").includes("immutable") === hashed, `${name}: ${answer.status} ${answer.headers.get("cache-control")}`));
    }
    const page = readFileSync(join(folder, "index.html"), "utf8");
    out.push(that(!/<script(?![^>]*src=)|<style|\son\w+=|style=/.test(page), "the page has something inline"), that(!/\{\w+\}/.test(page), "a name was not put in"));
    const { gzip } = sizesOf(new Map(filesOf(folder).map((name) => [name, readFileSync(join(folder, name))])));
    return { detail: all(out), note: `${gzip} bytes by gzip without the door` };
  });
}

// The lead's desk lies on the same origin: its pages are the server's, and none is kept on a coach's phone.
async function desk(context) {
  return withApp(context, async (app) => {
    const { phone, page } = await pairedApp(app);
    const before = await cached(page);
    app.way.set("says", { path: /^\/desk/, status: 200, body: "<!doctype html><title>the desk</title>" });
    const out = [];
    for (const path of ["/desk/", "/desk/index.html", "/desk/week?x=1", "/desk"]) {
      app.way.seen.length = 0;
      const other = await phone.page(`${app.way.url}${path}`);
      const asked = app.way.seen.some((one) => one.path === path);
      out.push(that((await other.title()) === "the desk" && asked, `${path}: '${await other.title()}', asked for: ${asked}`));
      await other.close();
    }
    const coach = await phone.page(`${app.way.url}/desks`);
    out.push(that((await coach.title()) === "Lanework", `/desks: '${await coach.title()}'`));
    out.push(that((await cached(page)).paths.join() === before.paths.join(), "a page of the desk was kept"));
    app.way.set("cut");
    const none = await phone.context.newPage();
    const said = await none.goto(`${app.way.url}/desk/`).then(() => "a page", (error) => error.message);
    out.push(that(said.includes("ERR_"), `without signal: ${said}`));
    return all(out);
  });
}

export const shell = [
  { name: "a phone that lost its right says so", run: lostRight },
  { name: "opens without signal, and the caches hold only the shell", run: offline },
  { name: "a newer server is told of, and a newer version waits until it may take over", run: renewed },
  { name: "the desk's pages are the server's, with signal and without", run: desk },
  { name: "hashed names, and nothing inline", run: names },
];
