// What the real app shows where it cannot take over what lies on the phone: of an older form that could not be changed, and
// of a newer app's.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { all, that } from "../serve/expect.mjs";
import { entryOf, readAll, rowsOfForm1, writeForm1 } from "./older_form.mjs";
import { fit, withApp } from "./pairs.mjs";
import { Phone } from "./phone.mjs";

const kPictures = process.env.LANEWORK_PICTURES;
const picture = async (page, name) => kPictures && page.screenshot({ path: join(kPictures, `${name}.png`) });

// The database fills up while it is brought to the newer form.
function fullWhileChanging() {
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...words) {
    if (this.transaction.mode === "versionchange") throw new DOMException("full", "QuotaExceededError");
    return put.apply(this, words);
  };
}

async function rescued(context) {
  return withApp(context, async ({ way }) => {
    const phone = await Phone.make({ acceptDownloads: true });
    const bare = await phone.page(`${way.url}/manifest.webmanifest`);
    await writeForm1(bare, rowsOfForm1("a-secret", "a-device"));
    const before = await readAll(bare);
    await bare.close();
    const page = await phone.context.newPage();
    await page.addInitScript(fullWhileChanging);
    await page.goto(way.url);
    await page.getByRole("heading", { name: "Nothing was lost" }).waitFor();
    await picture(page, "rescue");
    const out = [await fit(page)];
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save what waits: 2" }).click()]);
    const saved = JSON.parse(readFileSync(await download.path(), "utf8"));
    out.push(that(download.suggestedFilename() === "lanework-waiting.json" && saved.client === 1, download.suggestedFilename()));
    out.push(that(JSON.stringify(saved.entries.map(({ id }) => id)) === JSON.stringify([4, 5].map((sequence) => entryOf(sequence).id)), JSON.stringify(saved)));
    out.push(that((await readAll(page)) === before, "the old form was touched"));
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByRole("heading", { name: "Nothing was lost" }).waitFor();
    await page.close();
    // Once there is room it is taken over by itself.
    const roomy = await phone.page(way.url);
    await roomy.waitForSelector("#code-again");
    out.push(that(JSON.parse(await readAll(roomy)).version === 2, "it was not taken over"));
    await phone.remove();
    return all(out);
  });
}

async function newer(context) {
  return withApp(context, async ({ way }) => {
    const phone = await Phone.make();
    const bare = await phone.page(`${way.url}/manifest.webmanifest`);
    await bare.evaluate(() => new Promise((resolve) => {
      const request = indexedDB.open("lanework", 3);
      request.onupgradeneeded = () => request.result.createObjectStore("shelf").put({ note: "of a newer app" }, 1);
      request.onsuccess = () => resolve(request.result.close());
    }));
    const before = await readAll(bare);
    const page = await phone.page(way.url);
    await page.getByRole("heading", { name: "Update the app" }).waitFor();
    await picture(page, "update-the-app");
    const out = [await fit(page), that(!/browser/i.test(await page.textContent("main")), "it blames the browser")];
    await page.getByRole("button", { name: "Look for the newer version" }).click();
    await page.reload();
    await page.getByRole("heading", { name: "Update the app" }).waitFor();
    out.push(that((await readAll(bare)) === before, "what the newer app wrote was touched"), that(phone.said.every((line) => !line.startsWith("error:")), phone.said.join("\n")));
    await phone.remove();
    return all(out);
  });
}

export const formsInApp = [
  { name: "an older form that could not be changed: the app says so, and what waits is saved by hand", run: rescued },
  { name: "what a newer app has written: an older one says 'update the app' and touches nothing", run: newer },
];
