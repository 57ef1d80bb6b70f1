// People and privacy, each task as the lead does it.
import { readFileSync } from "node:fs";
import { all, entry, that, wrapUp } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, kWide, withDesk } from "./harness.mjs";
import { qrFault } from "./qr.mjs";

const kPassword = "seventeen grey gulls";
const [kMarkup, kLong, kRightToLeft, kPictures] = kHostile;

const row = (page, text) => page.locator("tbody tr", { hasText: text });
const taken = async (page) => that((await page.title()) !== "taken" && (await page.locator("main img").count()) === 0, "markup was run");

// From nothing to a coach whose phone is paired, and shut out again.
async function invited(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const out = [];
    await desk.at("#/people");
    await desk.picture("people-accounts");
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Invite somebody" }).click();
    await page.getByLabel("Name", { exact: true }).fill("Ása Þórsdóttir");
    out.push(that(/^[a-z0-9.]+$/.test(await page.getByLabel("Sign-in name").inputValue()), "the name as it is typed is not one that is taken"));
    await page.getByLabel("Sign-in name").fill("coach");
    await page.getByLabel("Under-10 Wrens").check();
    await page.getByLabel("Under-13 Kestrels").check();
    await desk.picture("people-invite");
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Make the account" }).click();
    await page.getByText("Somebody has that sign-in name already.").waitFor();
    await page.getByLabel("Sign-in name").fill("asa");
    await page.getByRole("button", { name: "Make the account" }).click();
    const link = await page.getByLabel("The link", { exact: true }).inputValue();
    const letter = await page.getByLabel("A message to send it with").inputValue();
    out.push(that(letter.includes(link) && letter.includes("Ása") && letter.includes("asa"), letter));
    await desk.picture("people-link");
    out.push(await desk.faults(), await qrFault(page, link, "people-link"));
    await page.getByRole("button", { name: "Close" }).click();
    await row(page, "Ása Þórsdóttir").getByText("has not used the link yet").waitFor();

    const own = await desk.window({});
    await own.goto(link);
    await own.getByLabel("Password", { exact: true }).fill("short");
    await own.getByLabel("The same once more").fill("another");
    out.push(that(!own.url().includes("activate"), "the link stays in the address"), await desk.faults(own));
    await own.getByRole("button", { name: "Keep it" }).click();
    await own.getByText("The two are not the same.").waitFor();
    await own.getByLabel("Password", { exact: true }).fill(kPassword);
    await own.getByLabel("The same once more").fill(kPassword);
    await desk.picture("activate", own);
    await own.getByRole("button", { name: "Keep it" }).click();
    await own.getByText("Sign in with the name asa").waitFor();
    await own.getByLabel("Sign-in name").fill("asa");
    await own.getByLabel("Password").fill(kPassword);
    await own.keyboard.press("Enter");
    await own.goto(`${desk.url}#/people`);
    await own.waitForSelector("main h1");
    out.push(that((await own.textContent("main h1")) === "Your evenings are on the phone", "a coach is shown a lead's screen"));

    await page.reload();
    await desk.settled();
    await page.getByRole("link", { name: "Ása Þórsdóttir" }).click();
    await page.getByRole("button", { name: "Open a link for a phone" }).click();
    const opens = await page.getByLabel(/To open on the phone/).inputValue();
    out.push(await qrFault(page, opens, "people-pair"));
    const secret = opens.split("#pair=")[1];
    const claimed = await people.nobody().post("/api/pairings/claim", { link: secret, label: kMarkup.slice(0, 60) });
    const code = page.getByLabel("The six digits that the phone shows");
    await code.waitFor();
    await code.fill("000000");
    await page.keyboard.press("Enter");
    await page.waitForSelector("dialog .fault");
    await desk.picture("people-pair");
    out.push(await desk.faults());
    await page.waitForTimeout(1100); // no second try at once
    await code.fill(claimed.json.code);
    await page.keyboard.press("Enter");
    await page.locator("dialog").getByText("Paired.").waitFor();
    await page.goBack();
    await page.waitForSelector("dialog[open]", { state: "detached" });
    await page.getByRole("link", { name: "Phones" }).click();
    await row(page, "Ása").getByText("part of the club").waitFor();
    await desk.picture("people-phones");
    out.push(await desk.faults(), await taken(page));
    await row(page, "Ása").getByRole("button").click();
    await desk.picture("people-shut-out");
    await page.locator("dialog").getByRole("button", { name: "Shut out" }).click();
    await row(page, "Ása").getByText("shut out", { exact: true }).waitFor();
    const device = people.nobody().as({ device: claimed.json.secret });
    out.push(that((await device.get("/api/device/squads")).json.error === "revoked", "it still gets something"));

    await page.getByRole("link", { name: "Who may come in" }).click();
    await page.getByRole("link", { name: "Ása Þórsdóttir" }).click();
    await page.getByRole("button", { name: "End it…" }).click();
    await page.locator("dialog input").fill("someone else");
    await page.keyboard.press("Enter");
    await page.getByText("That is another.").waitFor();
    await page.locator("dialog input").fill("asa");
    await page.keyboard.press("Enter");
    await row(page, "Ása").getByText("ended").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await row(page, "Ása").getByText("ended").waitFor({ state: "detached" });
    return all(out);
  });
}

async function charged(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    const charges = async () => (await caller.get("/api/accounts")).json.accounts.find(({ sign_in }) => sign_in === "coach").charges;
    await desk.at("#/people");
    const before = JSON.stringify(await charges());
    await row(page, "Maren").getByRole("link").click();
    await page.getByLabel("Under-10 Goldcrests").check();
    await desk.picture("people-account");
    const out = [await desk.faults()];
    await page.getByRole("button", { name: "Save the squads" }).click();
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await row(page, "Maren").getByText("Goldcrests").waitFor();
    await desk.picture("people-undo");
    out.push(that((await charges()).some(({ squad }) => squad === "u10-goldcrests"), "not charged"));
    await page.locator("h1").click();
    await page.keyboard.press("Control+z");
    await row(page, "Maren").getByText("Goldcrests").waitFor({ state: "detached" });
    out.push(that(JSON.stringify(await charges()) === before, "undo is not what was before"));
    // Another lead at the same time: the second is told, and nothing is lost unseen.
    await row(page, "Maren").getByRole("link").click();
    await page.getByLabel("Under-10 Goldcrests").check();
    const maren = (await caller.get("/api/accounts")).json.accounts.find(({ sign_in }) => sign_in === "coach");
    await caller.post(`/api/accounts/${maren.account}/charges`, { charges: [{ squad: "u16-merlins" }] });
    await page.getByRole("button", { name: "Save the squads" }).click();
    await page.getByText("Somebody else changed the squads of Maren meanwhile; they are now: Under-16 Merlins").waitFor();
    await desk.picture("people-meanwhile");
    out.push(await desk.faults(), that((await charges()).map(({ squad }) => squad).join() === "u16-merlins", "it was overwritten unseen"));
    await page.getByRole("button", { name: "Save the squads" }).click();
    await row(page, "Maren").getByText("Goldcrests").waitFor();
    return all(out);
  });
}

async function oneChild(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const out = [];
    await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: [entry("hurt", { player: "Q05", place: "knee" })] });
    await people.device("lead").post("/api/sync", { client: 1, most: 0, entries: [entry("restriction", { player: "Q05", areas: ["knee"], instruction: `${kMarkup} ${kRightToLeft}` })] });
    await desk.at("#/people?part=child");
    await page.getByLabel("Squad").selectOption("u13-kestrels");
    await page.getByRole("table", { name: "Under-13 Kestrels" }).waitFor();
    await desk.picture("people-roster");
    out.push(await desk.faults());
    await page.getByRole("row", { name: /Q05/ }).getByRole("link").click();
    await page.getByText("was hurt").waitFor();
    await desk.settled();
    await desk.picture("people-child");
    out.push(await desk.faults(), await taken(page), that(new URL(page.url()).hash === "#/people/Q05", page.url()));
    await page.reload();
    await page.getByRole("button", { name: "Write down an answer…" }).click();
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("Choose at least one.").waitFor();
    await page.getByLabel("Counted in the club's statistics").check();
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("Choose what was answered.").waitFor(); // nobody has agreed by a form that was not filled in
    await page.getByLabel("The answer").selectOption({ label: "withdrawn" });
    await page.getByLabel("Who answered").selectOption({ label: "the child" });
    await desk.picture("people-answer");
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.locator("dd", { hasText: "not agreed, or withdrawn" }).waitFor();
    out.push(that((await page.locator("dd", { hasText: /^agreed$/ }).count()) === 2, "other answers changed"));
    await page.getByRole("button", { name: "A copy for the family…" }).click();
    await page.getByRole("button", { name: "Save the file" }).click();
    await page.getByText("Say how").waitFor();
    await page.getByLabel("How you made sure").fill(kLong + kPictures);
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: "Save the file" }).click();
    await page.getByText("At most 200 bytes").waitFor();
    await page.getByLabel("How you made sure").fill("in person");
    await desk.picture("people-export");
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
    const copy = JSON.parse(readFileSync(await download.path(), "utf8"));
    out.push(that(copy.player === "Q05" && copy.entries.some(({ kind }) => kind === "hurt"), "not a copy of it"), that(download.suggestedFilename() === "one-player.json", download.suggestedFilename()));
    await page.getByRole("button", { name: "Erase everything…" }).click();
    await desk.picture("people-erase");
    out.push(await desk.faults());
    await page.getByLabel("Type Q05").fill("Q06");
    await page.getByRole("button", { name: "Erase for good" }).click();
    await page.getByText("That is another.").waitFor();
    await page.getByLabel("Type Q05").fill("Q05");
    await page.getByRole("button", { name: "Erase for good" }).click();
    await page.getByRole("heading", { name: "Erased" }).waitFor();
    await page.reload();
    await page.getByText("It is not there, or not for you.").waitFor();
    for (const text of [kMarkup, kLong, kRightToLeft, "../../x"]) {
      await desk.at("#/people?part=child");
      await page.getByLabel("Or the child's id").fill(text);
      await page.getByRole("button", { name: "Open" }).click();
      await page.getByText("An id has letters").waitFor();
    }
    return all(out);
  });
}

// By name, with one line in the book of reads for all names; then answers of families, of many children at once.
async function namesAndAnswers(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    const [{ player, name, squads: [squad] }] = (await caller.get("/api/players")).json.players;
    const out = [];
    await desk.at("#/people?part=child");
    await page.getByRole("button", { name: "Find a child by name" }).click();
    const field = page.getByLabel("Name, or the beginning of it");
    await field.fill(name.slice(0, 5).toUpperCase());
    await row(page, name).getByRole("link").waitFor();
    await desk.picture("people-by-name");
    out.push(await desk.faults(), that(!page.url().includes(name.slice(0, 5)), page.url()));
    for (const text of kHostile) {
      await field.fill(text);
      await page.getByText("0 children", { exact: true }).waitFor();
    }
    out.push(await taken(page));
    await page.getByRole("link", { name: "Answers of families" }).click();
    await page.getByLabel("Squad").selectOption(squad);
    await page.getByLabel("Show").selectOption({ label: "all" });
    await page.getByRole("checkbox", { name: `Tick ${name}` }).check();
    await desk.picture("people-consents");
    out.push(await desk.faults());
    await page.reload();
    await desk.settled();
    await page.getByRole("button", { name: "Tick all" }).click();
    await page.getByRole("button", { name: /Write down an answer for \d+ children/ }).click();
    for (const purpose of ["Training data", "A record of injuries", "Counted in the club's statistics"]) await page.getByLabel(purpose, { exact: true }).check();
    await page.getByLabel("The answer").selectOption({ label: "refused" });
    await page.getByLabel("Who answered").selectOption({ label: "the second of two guardians" });
    await page.getByLabel("Which text was signed").fill(kMarkup);
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("A mark has letters").waitFor();
    await page.getByLabel("Which text was signed").fill("2026-09-en");
    await desk.picture("people-answers");
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.waitForSelector("dialog", { state: "detached" });
    const now = (await caller.get("/api/consents")).json.players;
    const of_squad = now.filter((one) => one.squads.includes(squad));
    out.push(that(of_squad.length > 5 && of_squad.every(({ stands }) => Object.values(stands).every((word) => word === "withheld")), JSON.stringify(of_squad[0])));
    out.push(that(now.some(({ stands }) => stands.statistics !== "withheld"), "other squads were answered for"));
    await page.getByLabel("Show").selectOption({ label: "where somebody said no" });
    await row(page, name).waitFor();
    for (const viewport of [kWide, kPhone]) {
      await page.setViewportSize(viewport);
      await desk.picture(`people-consents-${viewport.width}`);
      out.push(await desk.faults());
    }
    await row(page, name).getByRole("link").click();
    await page.waitForFunction((id) => location.hash === `#/people/${id}`, player);
    return all(out);
  });
}

async function bookOfReads(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller } = desk;
    for (const where of ["/api/squads/u13-kestrels", "/api/players/Q07/timeline", "/api/squads/u10-wrens"]) await caller.get(where);
    await desk.at("#/people?part=reads");
    await desk.picture("people-reads");
    const out = [await desk.faults()];
    const all_of_them = await page.locator("tbody tr").count();
    await page.getByLabel("Looked at").selectOption({ label: "everything about one child" });
    await page.getByText("1 look", { exact: true }).waitFor();
    out.push(that(all_of_them > 1 && (await page.locator("tbody tr").count()) === 1, "not filtered"));
    await page.reload();
    await desk.settled();
    out.push(that((await page.locator("tbody tr").count()) === 1, "a reload forgets the filter"));
    await page.getByLabel("Looked at").selectOption("");
    const children = page.getByRole("button", { name: "Children" });
    await children.click();
    await children.click();
    const numbers = (await page.locator("td.number").allTextContents()).map(Number);
    out.push(that(numbers.every((one, at) => at === 0 || numbers[at - 1] >= one), numbers.join(" ")), that((await page.locator("th[aria-sort=descending]").count()) === 1, "not said"));
    return all(out);
  });
}

async function house(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page, caller } = desk;
    const told = (await caller.get("/api/house")).json;
    await desk.at("#/people?part=house");
    const out = [that((await page.getByRole("table", { name: "How long things are kept" }).locator("tbody tr").count()) === told.retention.length, "not every kind of thing")];
    out.push(that(told.backup.last !== undefined || (await page.getByText("No copy of the books is known").count()) === 1, "a copy that is not there"));
    await desk.picture("people-house");
    out.push(await desk.faults());
    await page.setViewportSize(kPhone);
    out.push(await desk.faults());
    return all(out);
  });
}

async function keptAside(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, people } = desk;
    const old = (fields) => ({ ...fields, device_time: new Date(Date.now() - 40 * 86400e3).toISOString() });
    await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: [old(entry("hurt", { player: "Q09", place: "ankle" })), old(wrapUp({ note: `${kMarkup} ${kPictures}` })), old(entry("mood-told", { player: "Q09", said: kLong }))] });
    await desk.at("#/people?part=kept");
    await desk.picture("people-kept");
    const out = [await desk.faults(), await taken(page)];
    const kept = page.locator("article");
    const before = await kept.count();
    out.push(that((await page.getByRole("heading", { name: "More than 14 days old by the phone's clock" }).count()) > 0, "no words of ours for the reason"));
    const ankle = page.locator("article", { hasText: "ankle" });
    await ankle.getByRole("button", { name: "Take it in" }).click();
    await ankle.waitFor({ state: "detached" });
    const newer = page.locator("article", { hasText: "mood-told" });
    await newer.getByRole("button", { name: "Take it in" }).click();
    await newer.getByRole("alert").waitFor();
    await newer.getByRole("button", { name: "Drop it…" }).click();
    await page.getByLabel("Why", { exact: true }).selectOption({ label: "not ours" });
    await desk.picture("people-drop");
    out.push(await desk.faults());
    await page.locator("dialog").getByRole("button", { name: "Drop it…" }).click();
    await newer.waitFor({ state: "detached" });
    await row(page, "not ours").waitFor();
    out.push(that(before === 3 && (await kept.count()) === 1, `${before} kept aside at first`));
    return all(out);
  });
}

const kParts = ["#/people", "#/people?part=phones", "#/people?part=child&squad=u13-kestrels", "#/people/Q05", "#/people?part=reads", "#/people?part=kept", "#/people?part=consents&show=all", "#/people?part=house", "#/coaches"];

// On a wall that others look at: of nobody is there a name, nor on paper.
async function withoutNames(house) {
  return withDesk(house, {}, async (desk) => {
    const { page, caller, people } = desk;
    const names = [...(await caller.get("/api/squads/u13-kestrels")).json.roster, ...(await caller.get("/api/accounts")).json.accounts].map(({ name }) => name);
    await people.device("coach").post("/api/sync", { client: 1, most: 0, entries: [{ ...wrapUp({ note: `${names[4]} was away` }), device_time: new Date(Date.now() - 40 * 86400e3).toISOString() }] });
    await desk.at("#/people");
    await page.getByRole("button", { name: "Without names" }).click();
    const out = [];
    for (const hash of kParts) {
      await desk.at(hash);
      const said = await page.locator("body").innerHTML();
      const shown = names.filter((name) => said.includes(name.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;")));
      out.push(that(shown.length === 0, `${hash}: ${shown.join(", ")}`));
    }
    await desk.picture("people-without-names");
    return all(out, that(names.length > 15, "no names to look for"));
  });
}

// What cannot be a sign-in name is said at its field, whatever it is, and nothing of it is run.
async function hostile(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/people");
    await page.getByRole("button", { name: "Invite somebody" }).click();
    const sign_in = page.getByLabel("Sign-in name");
    for (const text of kHostile) {
      await page.getByLabel("Name", { exact: true }).fill(text);
      await sign_in.fill(text);
      await page.getByRole("button", { name: "Make the account" }).click();
      await page.locator("dialog .fault").first().waitFor();
      await page.waitForFunction(() => document.querySelector("dialog [aria-invalid=true]") !== null);
      out.push(that((await sign_in.inputValue()) === text, "what was typed is gone"), await taken(page));
    }
    await desk.picture("people-hostile");
    out.push(await desk.faults());
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog", { state: "detached" });
    out.push(that((await page.evaluate(() => document.activeElement.textContent)) === "Invite somebody", "the focus does not go back"));
    return all(out);
  });
}

// Every part in Spanish, at three widths; and names in no part where none are to be.
async function everywhere(house) {
  return withDesk(house, { locale: "es-ES" }, async (desk) => {
    const { page, caller } = desk;
    for (const [name, sign_in] of [[kMarkup, "hostile-1"], [kLong.slice(0, 120), "hostile-2"], [kRightToLeft, "hostile-3"], [kPictures, "hostile-4"]]) {
      await caller.post("/api/accounts", { name, sign_in, role: "coach" });
    }
    const out = [];
    for (const hash of kParts) {
      for (const viewport of [kUsual, kWide, kPhone]) {
        await page.setViewportSize(viewport);
        await desk.at(hash);
        await desk.picture(`people-es-${hash.replace(/\W+/g, "-")}-${viewport.width}`);
        out.push([hash, viewport.width, await desk.faults()].join(" "));
      }
    }
    out.push(await taken(page));
    return all(out.map((fault) => (/\d $/.test(fault) ? "" : fault)));
  });
}

export const people = [
  { name: "people: from an invitation to a paired phone, shut out, and the account's end", run: invited },
  { name: "people: other squads, and undone by the keyboard", run: charged },
  { name: "people: one child found, read, copied and erased", run: oneChild },
  { name: "people: found by name, and answers of a whole squad", run: namesAndAnswers },
  { name: "people: the book of reads, filtered and sorted", run: bookOfReads },
  { name: "people: how long things are kept, and copies", run: house },
  { name: "people: what was kept aside, taken in and dropped", run: keptAside },
  { name: "people: without names there is none", run: withoutNames },
  { name: "people: hostile text in an invitation", run: hostile, long: true },
  { name: "people: every part in Spanish, wide and on a phone, with names of any kind", run: everywhere, long: true },
];
