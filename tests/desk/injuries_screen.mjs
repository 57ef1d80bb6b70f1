// Injuries on the real server: the lead enters one by the map and one by the keyboard, sees the days lost, puts it right,
// holds back, goes the way back to its gates, and is told plainly where a family has not agreed.
import { readFileSync } from "node:fs";
import { all, entryId, kDay, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, withDesk } from "./harness.mjs";

const kSquad = "u13-kestrels";
const dayBefore = (days) => new Date(Date.parse(`${kDay}T12:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10);

const consent = (caller, player, answer) =>
  caller.post("/api/entries", { entries: [{ id: entryId(), kind: "consent", player, purpose: "injury-record", by: "guardian", answer, day: kDay }] });

async function chooseWhom(page, player) {
  await page.getByLabel("Squad", { exact: true }).selectOption(kSquad);
  await page.getByLabel("Player", { exact: true }).selectOption(player);
}

async function byTheMap(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    await consent(caller, "Q07", "given");
    await desk.at("#/injuries");
    const out = [await desk.faults()];
    await desk.picture("injuries");
    await page.getByRole("link", { name: "Enter an injury" }).click();
    await page.getByRole("button", { name: "Enter it" }).click();
    await page.getByText("Choose where, on the map or by typing.").waitFor(); // and nothing was sent
    await chooseWhom(page, "Q07");
    await page.getByLabel("Day it happened or began").fill(dayBefore(5));
    const map = page.getByRole("group", { name: "Back" });
    await map.getByRole("button", { name: "thigh, left" }).click();
    await page.getByText("Taken as: thigh, left").waitFor();
    await page.getByText("More that is known").click();
    await page.getByLabel("Contact", { exact: true }).selectOption("none");
    await page.getByLabel("While", { exact: true }).selectOption("sprinting");
    await page.getByLabel("Note", { exact: false }).fill(kHostile[0]);
    await desk.picture("injuries-form");
    out.push(await desk.faults());
    await page.setViewportSize(kPhone);
    await desk.picture("injuries-form-412");
    out.push(await desk.faults());
    await page.setViewportSize(kUsual);
    await page.getByRole("button", { name: "Enter it" }).click();
    await page.getByRole("heading", { name: "thigh, left" }).waitFor();
    await page.getByText("5 days so far").waitFor();
    const standing = (await caller.get(`/api/squads/${kSquad}`)).json.standing.find(({ player }) => player === "Q07");
    out.push(that(standing?.word.startsWith("sits out"), `the player does not sit out: ${JSON.stringify(standing)}`));
    out.push(that(/Was hurt: back of the thigh/.test(await page.textContent("main")), "the hurt is not there"), await desk.faults());
    out.push(that((await page.title()) !== "taken", "hostile text ran"));
    await desk.picture("injuries-one");
    const here = page.url();
    out.push(that(!/Q07|onerror|thigh/.test(here), `more than ids in ${here}`));
    await page.reload();
    await page.getByRole("heading", { name: "thigh, left" }).waitFor();
    await page.goBack();
    await page.getByRole("heading", { name: "Enter an injury" }).waitFor();
    await page.goForward();
    await page.getByRole("heading", { name: "thigh, left" }).waitFor();
    // More is known, and taken back; then put right; then the return.
    await page.getByRole("button", { name: "More is known" }).click();
    await page.getByRole("dialog").getByLabel("What it is").selectOption("muscle-injury");
    await page.getByRole("dialog").getByRole("button", { name: "Enter it" }).click();
    await page.getByRole("heading", { name: "thigh, left: muscle injury" }).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("heading", { name: "thigh, left", exact: true }).waitFor();
    await page.getByRole("button", { name: "Put it right" }).click();
    await page.getByRole("dialog").getByLabel("Or type it").fill("shin");
    await page.getByRole("dialog").getByLabel("Side").selectOption("right");
    await page.getByRole("dialog").getByRole("button", { name: "Enter it as it should be" }).click();
    await page.getByRole("heading", { name: "lower leg, right" }).waitFor();
    await page.getByRole("button", { name: "Back in full" }).click();
    await page.getByLabel("Back on").fill(dayBefore(1));
    await page.getByRole("button", { name: "Enter the return" }).click();
    await page.getByText("3 days", { exact: true }).waitFor();
    out.push(that(/Sits out, see a clinician/.test(await page.textContent("main")), "a return cleared somebody"));
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("3 days", { exact: true }).waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Back in full" }).click();
    await page.getByLabel("Back on").fill(dayBefore(1));
    await page.getByRole("button", { name: "Enter the return" }).click();
    await page.getByRole("button", { name: "Not back after all" }).click();
    await page.getByRole("button", { name: "Back in full" }).waitFor();
    out.push(...(await papers(desk)));
    await page.getByRole("button", { name: "It never was…" }).click();
    await desk.picture("injuries-never-was");
    out.push(await desk.faults());
    await page.getByRole("dialog").getByRole("button", { name: "It never was" }).click();
    await page.waitForFunction(() => location.hash === "#/injuries");
    out.push(that((await page.getByText("lower leg, right").count()) === 0, "what never was is still listed"));
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("lower leg, right").waitFor();
    return all(out);
  });
}

// The report and the letter, with hostile text in every field; nothing of it is kept.
async function papers(desk) {
  const { page } = desk;
  await page.getByRole("button", { name: "Incident report and letter" }).click();
  const dialog = page.getByRole("dialog");
  for (const field of await dialog.locator("textarea, input:not([type])").all()) await field.fill(`${kHostile[0]} ${kHostile[2]}`);
  await dialog.getByLabel("What was seen").fill(kHostile[1] + kHostile[1]);
  await dialog.getByRole("button", { name: "Save the report" }).click();
  await dialog.getByText("A line has at most 200 letters.").waitFor();
  await dialog.getByLabel("What was seen").fill("holds the shin\nlimps");
  const out = [];
  for (const [button, name] of [["Save the report", "incident-report.pdf"], ["Save the letter", "referral-letter.pdf"]]) {
    const [download] = await Promise.all([page.waitForEvent("download"), dialog.getByRole("button", { name: button }).click()]);
    const bytes = readFileSync(await download.path());
    out.push(that(download.suggestedFilename() === name && bytes.subarray(0, 5).toString() === "%PDF-", `${name}: ${bytes.subarray(0, 80)}`));
  }
  await desk.picture("injuries-incident");
  out.push(await desk.faults());
  await page.keyboard.press("Escape");
  await page.waitForSelector("dialog", { state: "detached" });
  out.push(that((await page.title()) !== "taken" && !(await page.content()).includes("limps"), "what was typed is still there"));
  return out;
}

async function byTheKeyboard(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    await consent(caller, "Q09", "refused");
    await desk.at("#/injuries?enter=new");
    await chooseWhom(page, "Q09");
    const map = page.getByRole("group", { name: "Front" });
    await map.getByRole("button", { name: "head", exact: true }).focus();
    for (const key of ["ArrowDown", "ArrowDown", "ArrowDown", "ArrowDown", "Enter"]) await page.keyboard.press(key);
    await page.getByText("Taken as: ", { exact: false }).waitFor();
    const out = [that((await page.locator(".spot.taken").count()) === 1, "the map shows another number of places than one")];
    await page.getByLabel("Or type it").fill("knee");
    await page.getByText("Taken as: knee", { exact: false }).waitFor();
    await page.keyboard.press("Enter");
    await page.getByText("The family has not agreed that this is kept: nothing was kept.", { exact: false }).waitFor();
    await desk.picture("injuries-no-consent");
    out.push(await desk.faults());
    const kept = await caller.get("/api/injuries");
    out.push(that(!kept.json.injuries.some(({ player }) => player === "Q09"), "it was kept"));
    const standing = (await caller.get(`/api/squads/${kSquad}`)).json.standing.find(({ player }) => player === "Q09");
    out.push(that(standing?.word.startsWith("sits out"), "a hurt child does not sit out for want of a consent"));
    return all(out);
  });
}

async function wayBack(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    await consent(caller, "Q11", "given");
    const opened = { id: entryId(), kind: "injury-opened", player: "Q11", squad: kSquad, day: dayBefore(3), what: ["region ankle", "side left"] };
    await caller.post("/api/entries", { entries: [{ id: entryId(), kind: "hurt", player: "Q11", place: "ankle" }, opened] });
    await desk.at(`#/injuries/${opened.id}`);
    await page.getByRole("button", { name: "Begin: after another injury" }).click();
    await page.getByRole("button", { name: "Begin the way back" }).click();
    await page.getByText("Gate: a clinician has seen the player. Waits for a clinician.").waitFor();
    await page.getByRole("button", { name: "Begin: daily life" }).click();
    await page.getByRole("button", { name: "Begin the step" }).click();
    const gate = page.getByRole("button", { name: "A clinician has answered: a clinician has seen the player" });
    await gate.click();
    await page.getByLabel("Name of the clinician").fill(kHostile[3]);
    await page.getByLabel("Profession").fill("physiotherapist");
    await page.getByRole("button", { name: "Enter the answer" }).click();
    await page.getByText("Gate: a clinician has seen the player. Answered by", { exact: false }).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await gate.waitFor();
    await page.getByRole("button", { name: "Add a restriction", exact: true }).click();
    await page.getByLabel("What is left out").selectOption("ankle");
    await page.getByLabel("Look again on").fill(dayBefore(-4));
    await page.getByLabel("Words for the coach").fill("no jumping");
    await page.getByRole("dialog").getByRole("button", { name: "Hold back" }).click();
    await page.getByText("Restriction: ankle", { exact: false }).or(page.getByText("no jumping")).first().waitFor();
    await desk.picture("injuries-way");
    const out = [await desk.faults()];
    await desk.at("#/injuries");
    const row = page.locator("tbody tr", { hasText: "ankle, left" }).first();
    const before = (await row.textContent()) ?? "";
    out.push(that(!/no day was set/.test(before) && /Q11/.test(before), `${before}: names without being asked for, or no day to look again`));
    await page.getByRole("button", { name: "Show names" }).click();
    await page.getByText("Q11").first().waitFor({ state: "detached" });
    await desk.picture("injuries-names");
    await page.getByRole("button", { name: "Español" }).click();
    await page.getByRole("heading", { name: "Lesiones" }).waitFor();
    await page.setViewportSize(kPhone);
    await desk.picture("injuries-es-412");
    out.push(await desk.faults());
    await desk.at(`#/injuries/${opened.id}`);
    await page.getByRole("heading", { name: "tobillo, izquierda" }).waitFor();
    out.push(await desk.faults(), that(!/\b(Gate|waits|step)\b/.test(await page.locator("section[aria-labelledby=way]").innerText()), "English is left"));
    await desk.picture("injuries-es-one-412");
    return all(out);
  });
}

export const injuries = [
  { name: "injuries: entered on the map, more known, put right, closed", run: byTheMap },
  { name: "injuries: by the keyboard, and a family that has not agreed", run: byTheKeyboard },
  { name: "injuries: the way back to its gates, held back, looked at again, in Spanish", run: wayBack },
];
