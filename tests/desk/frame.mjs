// The frame: the bundle, coming in, addresses, and what stands on every screen.
import { all, that } from "../serve/expect.mjs";
import { sizesOf } from "../../tools/web_folder.mjs";
import { kPhone, kWide, withDesk } from "./harness.mjs";

const kFirstBytes = 350_000;

function bundle({ files, first }) {
  const page = files.get("index.html").toString("utf8");
  const names = [...files.keys()].filter((name) => !/^(index\.html|icon\.svg)$/.test(name));
  const { brotli } = sizesOf(new Map([...files].filter(([name]) => first.has(name))));
  const door = [...first].find((name) => name.endsWith(".wasm"));
  return {
    detail: all(
      that(!/<script(?![^>]*src=)|<style|\son\w+=|style=/.test(page) && !/\{\w+\}/.test(page), "something inline, or a name that was not put in"),
      names.map((name) => that(/-[0-9A-Fa-f]{8,}\.|-[0-9A-Z]{8,}\./.test(name), `${name} has no digest`)),
      that(brotli <= kFirstBytes, `${brotli} bytes`), that(door === undefined, `${door} is loaded at once`),
    ),
    note: `the first screen is ${brotli} bytes by brotli`,
  };
}

async function comingIn(house) {
  return withDesk(house, { signed_in: false }, async (desk) => {
    const { page, people } = desk;
    const out = [];
    await page.goto(`${desk.url}#/coaches`);
    await page.waitForSelector("#door-title");
    await desk.picture("sign-in");
    out.push(await desk.faults());
    const typed = async (password) => {
      await page.getByLabel("Sign-in name").fill("lead");
      await page.getByLabel("Password").fill(password);
      await page.keyboard.press("Enter");
    };
    await typed("not this one at all");
    await page.waitForSelector(".fault");
    out.push(that(/do not belong together/.test(await page.textContent(".fault")), await page.textContent(".fault")));
    await page.waitForTimeout(1100); // the server lets nobody try again at once
    await typed(people.password("lead"));
    const code = page.getByLabel("Six digits, or a recovery code");
    await code.waitFor();
    await desk.picture("sign-in-code");
    out.push(await desk.faults());
    await code.fill("000000");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".fault");
    await page.waitForTimeout(1100);
    await code.fill(await people.authenticators.lead.next());
    await page.keyboard.press("Enter");
    await page.waitForSelector("main h1");
    out.push(that((await page.textContent("main h1")) === "Coaches", "not where the address said"), that(new URL(page.url()).hash === "#/coaches", page.url()));
    out.push(that((await page.evaluate(() => JSON.stringify(localStorage) + JSON.stringify(sessionStorage))).length < 120, "more is kept than two choices"));
    await page.getByRole("button", { name: "Sign out" }).click();
    await page.waitForSelector("#door-title");
    out.push(that((await page.textContent("body")).indexOf("Coach") < 0, "something is still there"));
    return all(out);
  });
}

async function addresses(house) {
  let took = 0;
  const detail = await withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const heading = () => page.textContent("main h1");
    const focused = () => page.evaluate(() => document.activeElement?.tagName);
    await desk.at("");
    const first = await heading();
    const out = [that(first !== "", "no first screen")];
    await page.getByRole("link", { name: "People and privacy" }).click();
    await desk.settled();
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
    out.push(that((await heading()) === "People and privacy", await heading()), that((await page.title()) === "People and privacy · Lanework", await page.title()));
    await page.getByRole("link", { name: "Coaches" }).click();
    await page.waitForFunction(() => document.querySelector("main h1")?.textContent === "Coaches");
    await page.goBack();
    await page.waitForFunction(() => document.querySelector("main h1")?.textContent === "People and privacy");
    await page.goForward();
    await page.waitForFunction(() => document.querySelector("main h1")?.textContent === "Coaches");
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
    const from = Date.now();
    await page.reload();
    await desk.settled();
    took = Date.now() - from;
    out.push(that((await heading()) === "Coaches", "a reload goes elsewhere"), that((await focused()) === "BODY", "a reload takes the focus"));
    for (const hash of ["#/nowhere", "#/week/2026-13-45", "#/people/<img src=x>", "#/people/a/b", "#people", "#/people/%00"]) {
      await page.goto(`${desk.url}${hash}`);
      await page.waitForSelector("main h1");
      const said = await heading();
      out.push(that(said === "There is nothing at this address", `${hash}: ${said}`));
    }
    return all(out);
  });
  return { detail, note: `a screen is there ${took} ms after a reload` };
}

// A session that is over, an answer that is late, and no answer: the screen stays, and goes on.
async function interruptions(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const out = [];
    await desk.at("#/people");
    await page.context().clearCookies();
    await page.getByRole("link", { name: "Coaches" }).click();
    await page.waitForSelector("#door-title");
    await page.getByLabel("Password").fill(people.password("lead"));
    await page.keyboard.press("Enter");
    await page.getByLabel("Six digits, or a recovery code").fill(await people.authenticators.lead.next());
    await page.keyboard.press("Enter");
    await page.waitForSelector("tbody tr");
    out.push(that((await page.textContent("main h1")) === "Coaches", "the screen was left"));
    let busy = 2;
    await page.route("**/api/accounts", (route) => (busy-- > 0 ? route.fulfill({ status: 503, headers: { "Retry-After": "1" }, contentType: "application/json", body: '{"error":"store-busy","what":"x"}' }) : route.fallback()));
    await page.reload();
    await page.waitForFunction(() => /waits and asks again/.test(document.body.textContent));
    await page.waitForSelector("tbody tr");
    out.push(that(busy < 0, "it was not asked again"));
    await page.context().setOffline(true);
    await page.getByRole("link", { name: "People and privacy" }).click();
    await page.getByRole("heading", { name: "This screen did not load" }).waitFor();
    await page.context().setOffline(false);
    await page.getByRole("button", { name: "Try again" }).click();
    await page.waitForSelector("tbody tr");
    await page.context().setOffline(true);
    await page.getByRole("link", { name: "Coaches" }).click();
    await page.waitForSelector(".bar.act");
    await desk.picture("no-signal");
    await page.context().setOffline(false);
    await page.getByRole("button", { name: "Try again" }).first().click();
    await page.waitForSelector("tbody tr");
    out.push(that((await page.locator(".bar.act").count()) === 0, "it still says that nobody answers"));
    return all(out);
  });
}

async function choices(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/coaches");
    const names = await page.locator("tbody th").allTextContents();
    await page.getByRole("button", { name: "Without names" }).click();
    const hidden = await page.textContent("body");
    out.push(that(names.length > 0 && names.every((name) => !hidden.includes(name)), "a name stands there"));
    await desk.picture("without-names");
    await page.reload();
    await desk.settled();
    out.push(that(names.every((name) => !page.url().includes(name)), "a name in the address"), that((await page.getByRole("button", { name: "Without names" }).getAttribute("aria-pressed")) === "true", "a reload shows names"));
    await page.getByRole("button", { name: "Español" }).click();
    out.push(that((await page.textContent("main h1")) === "Entrenadores", "not in Spanish"), that((await page.getAttribute("html", "lang")) === "es", "the page does not say so"));
    await desk.picture("spanish");
    await page.getByRole("button", { name: "Sin nombres" }).click();
    for (const [name, viewport] of [["wide", kWide], ["phone", kPhone]]) {
      await page.setViewportSize(viewport);
      await desk.picture(`coaches-${name}`);
      out.push(await desk.faults());
    }
    out.push(that((await desk.shifts()) < 0.01, `things moved: ${await desk.shifts()}`));
    return all(out);
  });
}

export const frame = [
  { name: "the bundle: hashed, nothing inline, within its budget, the engine not at once", run: bundle },
  { name: "coming in by hand, with a wrong password and a wrong code first, and out again", run: comingIn },
  { name: "addresses: back, forward, reload, and such as are none", run: addresses },
  { name: "a session that is over, a busy server and no signal", run: interruptions },
  { name: "no names, Spanish, wide, on a phone; nothing moves", run: choices },
];
