// What a lead keeps of a try, on a club's folder of its own: beside another lead, contested, and taken back.
import { cpSync } from "node:fs";
import { all, that } from "../serve/expect.mjs";
import { withDesk } from "./harness.mjs";
import { kSquad, openComing, replanned, rows } from "./squad_evening.mjs";

// On a folder of its own: kept, changed by another lead meanwhile, contested, unsound, and taken back.
async function keeps(house) {
  const club = house.demo.file("club-of-squad");
  cpSync("demo/quillmere", club, { recursive: true });
  return withDesk(house, { flags: ["--plan-from", club] }, async (desk) => {
    const { caller } = desk;
    const page = await openComing(desk);
    const path = `squads/${kSquad}.toml`;
    const document = async () => (await caller.get("/api/club/documents")).json.documents.find((one) => one.path === path);
    const write = async (more) => {
      const { digest, content } = await document();
      const answer = await caller.post("/api/club/documents", { changes: [{ path, instead_of: digest, content: { ...content, ...more } }] });
      return that(answer.status === 200, answer.text.slice(0, 300));
    };
    const locks = async () => JSON.stringify((await document()).content.locks ?? {});
    const first = await locks();
    await page.getByRole("button", { name: "Side plank: leave it out" }).click();
    const keep = page.getByRole("button", { name: "Keep for this squad" });
    await keep.waitFor();
    await page.waitForLoadState("networkidle");
    // Another lead renames the squad: both stand.
    const out = [await write({ name: "Under-13 Kites" })];
    await keep.press("Enter");
    await page.getByLabel("What was done last").getByRole("button", { name: "Undo" }).waitFor();
    const after = await document();
    out.push(that(after.content.locks?.bans?.includes("side-plank") && after.content.name === "Under-13 Kites", JSON.stringify(after.content.locks)));
    out.push(that(/Somebody else had changed the squad meanwhile; both stand/.test(await page.textContent("body")), "it does not say that it was put together"));
    await desk.picture("squad-kept");
    out.push(await desk.faults());
    await page.getByLabel("What was done last").getByRole("button", { name: "Undo" }).click();
    await page.waitForFunction(() => /Taken back/.test(document.body.textContent));
    out.push(that((await locks()) === first, `${await locks()} is not ${first}`));
    // Another lead wrote of the same drill: this one decides.
    await page.reload();
    await page.waitForSelector(".ribbon-row");
    await page.getByRole("button", { name: "Squat: leave it out" }).click();
    await keep.waitFor();
    await page.waitForLoadState("networkidle");
    out.push(await write({ locks: { pins: [{ drill: "squat" }] } }));
    await keep.click();
    await page.getByText("Somebody else changed the same meanwhile: Squat is to be in.", { exact: false }).waitFor();
    out.push(that(/pins/.test(await locks()) && !/bans/.test(await locks()), "it was written over"), await desk.faults());
    await desk.picture("squad-contested");
    await page.getByRole("button", { name: "Keep mine instead" }).click();
    await page.getByLabel("What was done last").getByRole("button", { name: "Undo" }).waitFor();
    out.push(that(/bans/.test(await locks()) && !/pins/.test(await locks()), await locks()));
    return all(out);
  });
}

// The rest of what may be kept: the order, the minutes of the slot, two who are kept apart; and all of it taken back at once.
async function keepsTheRest(house) {
  const club = house.demo.file("club-of-order");
  cpSync("demo/quillmere", club, { recursive: true });
  return withDesk(house, { flags: ["--plan-from", club] }, async (desk) => {
    const { caller } = desk;
    const page = await openComing(desk);
    const documents = async () => (await caller.get("/api/club/documents")).json.documents;
    const content = async (path) => (await documents()).find((one) => one.path === path)?.content;
    const squadFile = `squads/${kSquad}.toml`;
    const sorted = async () => JSON.stringify(await content(squadFile), (_, value) => (value && typeof value === "object" && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).sort()) : value));
    const first = await sorted();
    const usual = await rows(page);
    await page.getByRole("button", { name: "Side plank: earlier" }).press("Enter");
    await replanned(page, usual);
    for (let minute = 0; minute < 3; minute++) await page.getByRole("button", { name: "Minutes of the slot: fewer" }).click();
    await page.getByText("Names: who stands with whom").click();
    const apart = page.locator(".evening-slip").getByRole("button", { name: /^Keep .* apart$/ });
    const label = await apart.first().getAttribute("aria-label");
    const groups = await apart.count();
    await apart.first().press("Enter");
    await page.getByRole("heading", { name: "Kept apart in this try" }).waitFor();
    await page.waitForFunction((was) => ![...document.querySelectorAll(".evening-slip button")].some((one) => one.getAttribute("aria-label") === was), label);
    await page.getByText("the order of drills, as the squad's own house routine", { exact: false }).waitFor();
    await desk.picture("squad-to-keep");
    const out = [that(groups > 5, `${groups} pairs`), await desk.faults()];
    out.push(that(/To be kept:[^]*order of drills[^]*17 min on [^]*a pair kept apart/.test(await page.locator("[aria-label='Keep for this squad']").first().innerText()), await page.locator("[aria-label='Keep for this squad']").first().innerText()));
    await page.getByRole("button", { name: "Keep for this squad" }).press("Enter");
    await page.getByLabel("What was done last").getByRole("button", { name: "Undo" }).waitFor();
    const kept = await content(squadFile);
    const own = await content(`routines/${kSquad}.toml`);
    const order = own?.drill.map(({ id }) => id) ?? [];
    out.push(that(kept.routine === `../routines/${kSquad}.toml` && order.indexOf("side-plank") === order.indexOf("reach-on-one-leg") - 1, `${kept.routine}: ${order}`));
    out.push(that(kept.week.some(({ minutes }) => minutes === 17) && kept.week.some(({ minutes }) => minutes === 20), JSON.stringify(kept.week)));
    out.push(that(kept.partners.forbidden.length === 2, JSON.stringify(kept.partners)));
    await page.getByRole("heading", { name: "Kept apart for this squad" }).waitFor();
    await desk.picture("squad-kept-all");
    out.push(await desk.faults());
    await page.getByLabel("What was done last").getByRole("button", { name: "Undo" }).click();
    await page.waitForFunction(() => /Taken back/.test(document.body.textContent));
    out.push(that((await sorted()) === first, `${await sorted()}\nis not\n${first}`), that((await content(`routines/${kSquad}.toml`)) === undefined, "the squad's own routine is left behind"));
    return all(out);
  });
}

// Two windows on one evening, each with minutes of its own: whoever comes second is told and decides; what does not quarrel is
// put together. Back, forward and reload in between.
async function atOnce(house) {
  const club = house.demo.file("club-of-two");
  cpSync("demo/quillmere", club, { recursive: true });
  return withDesk(house, { flags: ["--plan-from", club] }, async (desk) => {
    const { caller } = desk;
    const page = await openComing(desk);
    const other = await desk.window({ cookie: caller.cookie });
    await other.goto(page.url());
    await other.waitForSelector(".ribbon-row");
    const fewer = async (on, minutes) => {
      for (let minute = 0; minute < minutes; minute++) await on.getByRole("button", { name: "Minutes of the slot: fewer" }).click();
      await on.getByText(`${20 - minutes} min on `, { exact: false }).waitFor();
    };
    const keep = (on) => on.getByRole("button", { name: "Keep for this squad" });
    const minutes = async () => (await caller.get("/api/club/documents")).json.documents.find(({ path }) => path === `squads/${kSquad}.toml`).content.week.map((one) => one.minutes).join();
    await fewer(page, 3);
    await fewer(other, 5);
    await other.getByRole("button", { name: "Side plank: leave it out" }).click();
    await other.waitForLoadState("networkidle");
    await keep(page).click();
    await page.getByLabel("What was done last").getByRole("button", { name: "Undo" }).waitFor();
    await keep(other).click();
    await other.getByText("Somebody else changed the same meanwhile:", { exact: false }).waitFor();
    const told = await other.locator(".refused").innerText();
    const out = [that(/18:00 has 17 min/.test(told), told), that(/17/.test(await minutes()), await minutes())];
    await desk.picture("squad-two-leads", other);
    out.push(await desk.faults(other));
    await other.getByRole("button", { name: "Keep mine instead" }).press("Enter");
    await other.getByLabel("What was done last").getByRole("button", { name: "Undo" }).waitFor();
    out.push(that(/15/.test(await minutes()) && !/17/.test(await minutes()), await minutes()));
    // The try of the first window is its own still; a reload begins anew with what stands.
    await page.goBack();
    await page.waitForSelector(".block-table, .ribbon-row");
    await page.goForward();
    await page.waitForSelector(".ribbon-row");
    await page.reload();
    await page.waitForSelector(".ribbon-row");
    out.push(that((await page.getByRole("button", { name: "Undo", exact: true }).first().isDisabled()), "a reload keeps a try"));
    return all(out);
  });
}

export const squadKeeps = [
  { name: "squad: two windows at once: told, decided, put together", run: atOnce },
  { name: "squad: what was tried is kept, beside what another lead wrote, and taken back", run: keeps },
  { name: "squad: order, minutes and a pair kept apart are kept, and taken back", run: keepsTheRest },
];
