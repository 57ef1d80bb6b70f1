// The real app's lock, as a coach meets it: out of sight, a wrong code, somebody hurt meanwhile, and on as it was left.
import { readFileSync } from "node:fs";
import { all, that } from "../serve/expect.mjs";
import { enterCode, kCode } from "./paired.mjs";
import { fit } from "./pairs.mjs";

const kNames = readFileSync("demo/quillmere/roster.csv", "utf8").split("\n").map((line) => line.split(";")[1]?.trim()).filter((name) => name?.includes(" "));

const named = async (page) => {
  const text = await page.content();
  return kNames.filter((name) => text.includes(name) || text.includes(name.split(" ")[0] + " "));
};

// Puts the app out of sight for so long; the clock is moved, since nobody waits two minutes.
async function away(page, seconds) {
  await page.evaluate((milliseconds) => {
    const see = (state) => {
      Object.defineProperty(document, "visibilityState", { configurable: true, get: () => state });
      document.dispatchEvent(new Event("visibilitychange"));
    };
    const real = Date.now;
    see("hidden");
    Date.now = () => real() + milliseconds;
    see("visible");
    Date.now = real;
    delete document.visibilityState;
  }, seconds * 1000);
  await page.waitForTimeout(50);
}

const isLocked = (page) => page.evaluate(() => document.querySelector(".lock #code") !== null);

// On Tonight, with nothing running.
export async function lockedOnTonight(page, picture) {
  const out = [];
  await page.evaluate(() => document.querySelectorAll("details").forEach((one) => (one.open = true)));
  out.push(that((await named(page)).length > 3, "no name to be seen before it is locked"));
  await page.getByRole("button", { name: "Partners and swaps", exact: true }).first().click();
  const before = await page.textContent("h1");
  await away(page, 110);
  out.push(that(!(await isLocked(page)), "locked before two minutes were over"));
  await away(page, 121);
  await page.waitForSelector(".lock #code");
  out.push(that((await named(page)).length === 0, `named while locked: ${await named(page)}`), await fit(page));
  await picture("locked");
  await page.getByRole("button", { name: "Someone is hurt", exact: true }).click();
  await page.waitForSelector("dl.venue");
  const hurt = await page.textContent("main");
  out.push(that(/Call an ambulance|ambulance/i.test(hurt) && (await page.locator("a[href^='tel:']").count()) > 0, hurt), that((await named(page)).length === 0, `named to whoever asks for help: ${await named(page)}`), await fit(page));
  await picture("locked-hurt");
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await enterCode(page, "999990");
  await page.waitForSelector("#code-fault");
  out.push(that((await page.textContent("#code-fault")).includes("19"), await page.textContent("#code-fault")), await fit(page));
  await picture("locked-wrong");
  await enterCode(page, kCode);
  await page.waitForSelector("#code", { state: "detached" });
  await page.waitForSelector(".pitchside h1");
  out.push(that((await page.textContent("h1")) === before, `'${before}' before, '${await page.textContent("h1")}' after`));
  await page.getByRole("button", { name: "Close", exact: true }).first().click();
  return all(out);
}

// A session runs: the lock waits.
export async function notLockedInRun(page) {
  await away(page, 600);
  return that(!(await isLocked(page)), "locked in the middle of a session");
}

// That the session is over is on the disk, and the key no longer: a moment after the tap.
const keyIsAway = (page) => page.waitForFunction(() => new Promise((resolve) => {
  const request = indexedDB.open("lanework");
  request.onsuccess = () => {
    const row = request.result.transaction("keys").objectStore("keys").get("open");
    row.onsuccess = () => {
      request.result.close();
      resolve(row.result === undefined);
    };
  };
}), undefined, { timeout: 10000, polling: 100 });

export async function lockedAfter(page) {
  await keyIsAway(page);
  await away(page, 121);
  const out = [that(await isLocked(page), "not locked though the session is over")];
  await enterCode(page);
  await page.waitForSelector("#code", { state: "detached" });
  return all(out);
}
