// A whole evening, and an hour of Run: what the app holds in the end. The hour is by a clock that the test drives, since the app goes by
// Date and by timers alone. Of every minute five seconds are run with every timer and frame of theirs, the others are passed over.
import { openHeap, watchMemory } from "./heap.mjs";
import { passLock } from "./paired_app.mjs";

const kSliceMinutes = 5; // a new drill, and a look at the heap
const kRunMilliseconds = 5000;

export const tap = (page, name) => page.getByRole("button", { name, exact: true }).first().click();

export async function openTonight(page) {
  await passLock(page);
  await page.locator(".evenings .evening.main").first().click();
  await page.getByRole("button", { name: "Lay out", exact: true }).waitFor();
  await page.waitForSelector("main svg");
}

export async function startTonight(page) {
  await openTonight(page);
  await tap(page, "Lay out");
  await tap(page, "Start");
  await page.getByRole("button", { name: "Done", exact: true }).waitFor();
}

// From Tonight to Wrap up, each drill done; the most that was held on the way.
export async function fullEvening(phone, url) {
  const page = await phone.page("about:blank");
  await watchMemory(page);
  await page.goto(url);
  await openTonight(page);
  const heap = await openHeap(phone, page);
  const seen = [await heap.look()];
  await tap(page, "Lay out");
  await tap(page, "Start");
  const most = page.getByRole("button", { name: "Most", exact: true });
  const done = page.getByRole("button", { name: "Done", exact: true });
  await done.waitFor();
  let drills = 0;
  for (; !(await most.isVisible()) && drills < 40; drills++) {
    await page.waitForTimeout(1000); // a second tap within 0.9 s is none
    if (await done.isVisible()) await done.click();
    if (drills % 5 === 0) seen.push(await heap.look());
  }
  await most.click();
  await tap(page, "Finish");
  seen.push(await heap.look());
  await page.close();
  return { drills, most: seen.reduce((one, other) => (other.all > one.all ? other : one)) };
}

// On a phone of its own, whose evening is not begun. A new drill every five minutes.
export async function hourOfRun(phone, url) {
  const page = await phone.page("about:blank");
  await watchMemory(page);
  await page.clock.install();
  await page.goto(url);
  await page.clock.resume();
  await startTonight(page);
  await page.waitForSelector(".figure svg");
  const heap = await openHeap(phone, page);
  await page.clock.pauseAt(Date.now() + 5000);
  const seen = [];
  for (let minute = kSliceMinutes; minute <= 60; minute += kSliceMinutes) {
    for (let one = 0; one < kSliceMinutes; one++) {
      await page.clock.runFor(kRunMilliseconds);
      await page.clock.fastForward(60_000 - kRunMilliseconds);
    }
    await page.evaluate(() => [...document.querySelectorAll("button")].find((one) => one.textContent.trim() === "Done")?.click());
    await page.clock.runFor(2000);
    seen.push({ minute, ...(await heap.look()) });
  }
  const there = await page.evaluate(() => [...document.querySelectorAll("button")].some((one) => one.textContent.trim() === "Done"));
  await page.close();
  return { seen, there };
}
