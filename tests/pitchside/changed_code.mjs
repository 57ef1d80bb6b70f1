// Settings, 'Change the code', on the real app.
import { join } from "node:path";
import { all, that } from "../serve/expect.mjs";
import { openTonight, tap } from "./hour.mjs";
import { enterCode, kCode } from "./paired.mjs";
import { PairedApp } from "./paired_app.mjs";
import { fit } from "./pairs.mjs";
import { Way } from "./way.mjs";

const kNew = "730164";

async function fill(page, old, fresh, again = fresh) {
  for (const [id, code] of [["old", old], ["new", fresh], ["again", again]]) await page.fill(`#code-${id}`, code);
  await page.locator(".bar .main").click();
}

async function changed(context) {
  const app = await PairedApp.open(context, (server) => Way.open(server));
  try {
    const { phone, page } = await app.paired();
    await openTonight(page);
    app.between.set("cut"); // it needs no signal
    await tap(page, "Settings");
    await tap(page, "Change the code");
    const fault = async (words) => {
      await page.waitForFunction((text) => document.querySelector("#code-fault")?.textContent.includes(text), words);
      return fit(page);
    };
    await fill(page, kCode, "123");
    const out = [await fault("Six characters")];
    await fill(page, kCode, kNew, "730165");
    out.push(await fault("not the same"));
    await fill(page, "999990", kNew);
    out.push(await fault("Tries left: 19"));
    out.push(that((await page.inputValue("#code-old")) === "" && (await page.inputValue("#code-new")) === kNew, "a wrong old code takes the new one with it"));
    await fill(page, kCode, kNew);
    await page.getByRole("status").filter({ hasText: "The code is changed" }).waitFor();
    if (process.env.LANEWORK_PICTURES) await page.screenshot({ path: join(process.env.LANEWORK_PICTURES, "code-changed.png") });
    out.push(await fit(page));
    await tap(page, "Close");
    await tap(page, "All evenings");
    await tap(page, "Lock now");
    await enterCode(page, kCode);
    await page.waitForSelector("#code-fault");
    await enterCode(page, kNew);
    await page.locator(".evenings .evening").first().waitFor();
    return all(out, that(phone.said.every((line) => !line.startsWith("error:")), phone.said.join("\n")));
  } finally {
    await app.end();
  }
}

export const changedCode = [{ name: "the code is changed in the settings, with no signal", run: changed }];
