// How long the app takes to open, seen in Chromium: from the navigation's beginning until the list of evenings is painted, until
// a tap on tonight's is answered by its screen, and until its plan is drawn.
import { pause } from "../serve/server.mjs";
import { passLock } from "./paired_app.mjs";

// In the page before anything of the app: marks by performance.now(), which counts from the navigation.
function watch() {
  const marks = (window.marks = {});
  const painted = (name) => {
    if (marks[name] !== undefined) return;
    marks[name] = 0;
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        marks[name] = performance.now();
        const button = document.querySelector({ unpaired: ".pair-form button", asked: "#code", list: ".evenings .evening.main" }[name] ?? "main");
        const box = button?.getBoundingClientRect();
        if (box) window.screenIsThere?.(name, box.x + box.width / 2, box.y + Math.min(box.height, 40) / 2);
      };
      port2.postMessage(undefined);
    });
  };
  const look = () => {
    if (document.querySelector(".pair-form")) painted("unpaired");
    if (document.querySelector("#code")) painted("asked");
    else if (document.querySelector(".evenings .evening.main")) painted("list");
    else if (marks.list && document.querySelector("main")) {
      painted("answered");
      if (document.querySelector("main svg")) painted("planned");
    }
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true });
  addEventListener("pointerdown", () => marks.list && (marks.tapped ??= performance.now()), { capture: true });
  addEventListener("submit", () => (marks.entered ??= performance.now()), { capture: true });
}

// The evening as nobody has opened it yet, so that its plan is still to be made.
function forgetEvenings() {
  return new Promise((done, failed) => {
    const asked = indexedDB.open("lanework");
    asked.onerror = () => failed(asked.error);
    asked.onsuccess = () => {
      const database = asked.result;
      if (!database.objectStoreNames.contains("evening")) return done(database.close());
      const change = database.transaction("evening", "readwrite");
      change.objectStore("evening").clear();
      change.oncomplete = () => done(database.close());
    };
  });
}

// As an app that was put away by the system: nothing cached, but for what `keepShell` leaves; then the browser is begun anew.
async function cold(phone, url, keepShell, paired) {
  const page = await phone.context.newPage();
  const wire = await phone.context.newCDPSession(page);
  await wire.send("Network.enable");
  if (paired) {
    await page.goto(`${url}/api/me`); // a page of the same origin that is not the app
    await page.evaluate(forgetEvenings);
  }
  if (!keepShell) {
    await wire.send("Network.clearBrowserCache");
    await wire.send("Storage.clearDataForOrigin", { origin: url, storageTypes: "service_workers,cache_storage,shader_cache" });
  }
  await phone.context.close();
  await phone.open();
}

// Marks of one opening, in milliseconds. A tap is a real one, sent by the browser as soon as the list is painted; where the app asks for
// its code first, that is entered at once, and `entered` is when.
export async function opening(phone, url, { slowdown = 1, keepShell = false, offline = false, until = "planned" }) {
  await cold(phone, url, keepShell, until !== "unpaired");
  const page = await phone.context.newPage();
  const wire = await phone.context.newCDPSession(page);
  await page.addInitScript(watch);
  await page.exposeFunction("screenIsThere", async (name, x, y) => {
    if (name === "asked") return void (await passLock(page));
    if (name !== "list" || until === "list") return;
    for (const type of ["mousePressed", "mouseReleased"]) await wire.send("Input.dispatchMouseEvent", { type, x, y, button: "left", clickCount: 1 });
  });
  if (offline) await phone.context.setOffline(true);
  await pause(1000); // until the browser has settled after its own beginning
  await wire.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
  await page.goto(url, { waitUntil: "commit" });
  await page.waitForFunction((name) => window.marks?.[name] > 0, until, { timeout: 30000, polling: 50 });
  const marks = await page.evaluate(() => window.marks);
  await wire.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  if (offline) await phone.context.setOffline(false);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.close();
  marks.first = marks.asked ?? marks.list ?? marks.unpaired; // what can be tapped first
  return marks;
}

export const middle = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor((numbers.length - 1) / 2)];

// The median of each mark over some openings.
export async function openings(times, phone, url, options) {
  const seen = [];
  for (let time = 0; time < times; time++) seen.push(await opening(phone, url, options));
  const names = [...new Set(seen.flatMap((marks) => Object.keys(marks)))];
  return Object.fromEntries(names.map((name) => [name, middle(seen.map((marks) => marks[name] ?? Infinity))]));
}
