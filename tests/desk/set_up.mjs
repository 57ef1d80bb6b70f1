// A club from nothing: an empty ledger and an empty folder, and everything else by clicking; then a fault by its row, an
// undo, and another lead who was first.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Authenticator } from "../../tools/authenticator.mjs";
import { cookieOf } from "../serve/caller.mjs";
import { all, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kWide, withDesk } from "./harness.mjs";

const kPassword = "seventeen grey gulls";
const kSeasonFrom = "2026-08-31";
const kUndoMilliseconds = 8000; // at most, until it is done

// Three squads of eight, with a column that nobody needs and a name that is none.
function players({ wrong = "" } = {}) {
  const rows = ["U10", "U13 Girls", "U16"].flatMap((squad, group) =>
    Array.from({ length: 8 }, (_, index) => [`"${index === 0 ? kHostile[0].replaceAll('"', '""') : `Player ${group + 1}${index}`}"`, `${2017 - 3 * group}-0${index + 1}-11`, squad, "asthma"]));
  if (wrong) rows[9][1] = wrong;
  return `Player,Date of birth,Squad,Medical notes\n${rows.map((row) => row.join(",")).join("\n")}\n`;
}

export async function firstLead(house, ledger, nobody) {
  const run = (...words) => spawnSync(house.demo.program, [...words, "--ledger", ledger], { encoding: "utf8" });
  const link = /^ {2}([A-Za-z0-9_-]{43})$/m.exec(run("account", "add", "--sign-in", "lee", "--role", "lead").stdout)[1];
  await nobody.post("/api/activate", { link, password: kPassword });
  const half = nobody.as({ cookie: cookieOf(await nobody.post("/api/sign-in", { sign_in: "lee", password: kPassword })) });
  const { secret } = (await half.post("/api/second-factor/begin")).json;
  return half.as({ cookie: cookieOf(await half.post("/api/second-factor", { secret, code: await new Authenticator(secret).next() })) });
}

const upload = (page, text) => page.getByLabel("The spreadsheet, saved as CSV").setInputFiles({ name: "our players.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
const step = (page, name) => page.locator("nav.parts").getByRole("link", { name }).click();
const save = (page) => page.getByRole("button", { name: "Check and save" }).click();

// Another list, in another order, with one who is new and without one who was there: ids follow the names.
async function anotherList(desk, page, lee) {
  const idsOf = async () => new Map((await lee.get("/api/players")).json.players.map(({ name, player, squads }) => [`${name} of ${squads}`, player]));
  const before = await idsOf();
  await step(page, "Players");
  const [headings, ...rows] = players({}).trim().split("\n");
  const [, ...others] = rows.reverse();
  await upload(page, `${headings}\n${others.join("\n")}\nZoe New,2014-04-11,U13 Girls,none\n`);
  await page.getByText("23 players are known").waitFor();
  await page.getByText("New: Zoe New.").waitFor(); // and of three of one name, each in a squad, none is asked about
  await page.getByText("Not in this list: Player 37.").waitFor();
  await desk.picture("set-up-another-list", page);
  const fault = await desk.faults(page);
  await save(page);
  await page.getByText("Everything is saved.").waitFor();
  const after = await idsOf();
  await desk.picture("set-up-another-list-saved", page);
  const moved = [...before].filter(([name, id]) => after.has(name) && after.get(name) !== id);
  // Taken back as a whole: everybody is there again, under the id they had.
  await page.getByRole("button", { name: "Undo" }).click();
  let back = await idsOf();
  for (const until = Date.now() + kUndoMilliseconds; Date.now() < until && back.has("Zoe New of u13-girls"); ) back = await idsOf();
  const lost = [...before].filter(([name, id]) => back.get(name) !== id);
  return all(fault, that(lost.length === 0 && back.size === before.size, `not as before: ${lost.join()}`), that(moved.length === 0, `other ids: ${moved.join()}`), that(after.size === 24 && !after.has("Player 37 of u16"), `${after.size} players`), that(![...before.values()].includes(after.get("Zoe New of u13-girls")), "somebody's id was given again"));
}

// Another lead saves the same squad while it is open here: what each changed is put together and shown before it is saved; of
// what both changed one chooses; and looking at another screen in between makes nobody's change go over the other's.
async function twoLeads(desk, page, lee) {
  const squad = async () => (await lee.get("/api/club/documents")).json.documents.find(({ path }) => path === "squads/u13-girls.toml");
  const elsewhere = async (keys) => {
    const { path, digest, content } = await squad();
    return that((await lee.post("/api/club/documents", { changes: [{ path, instead_of: digest, content: { ...content, ...keys } }] })).status === 200, "the other lead could not save");
  };
  const girls = page.locator("details", { hasText: "U13 Girls" });
  const name = girls.getByLabel("Name", { exact: true });
  const meanwhile = page.getByText("Somebody else changed the same meanwhile");
  await girls.getByRole("button", { name: "Another evening" }).click();
  const out = [await elsewhere({ name: "U13 Girls A" })];
  await save(page);
  await meanwhile.waitFor();
  await page.getByText("what each of you changed is put together").waitFor();
  out.push(that((await name.inputValue()) === "U13 Girls A" && (await girls.getByRole("group", { name: "Evening 2" }).count()) === 1, "not put together"), that((await squad()).content.week.length === 1, "it was saved unseen"));
  await save(page);
  await page.getByText("Everything is saved.").waitFor();
  const both = (await squad()).content;
  out.push(that(both.name === "U13 Girls A" && both.week.length === 2, JSON.stringify(both)));

  await name.fill("U13 Girls B");
  out.push(await elsewhere({ name: "U13 Girls C" }));
  await page.getByRole("navigation", { name: "Screens" }).getByRole("link", { name: "Coaches" }).click();
  await page.getByRole("heading", { name: "Coaches" }).waitFor();
  await page.goBack();
  await save(page);
  await page.getByText("both of you changed it; yours stands, theirs is U13 Girls C").waitFor();
  await desk.picture("set-up-two-leads", page);
  out.push(await desk.faults(page));
  await page.getByRole("button", { name: "Take theirs: U13 Girls B, name" }).click();
  out.push(that((await name.inputValue()) === "U13 Girls C", await name.inputValue()));
  await name.fill("U13 Girls B");
  await save(page);
  await page.getByText("Everything is saved.").waitFor();
  return all(out, that((await squad()).content.name === "U13 Girls B", "not as it was chosen"));
}

// A new ledger, and a folder with nothing in it.
export function nothingYet(house, name) {
  const [ledger, club] = [house.demo.file(`${name}-ledger`), house.demo.file(`${name}-club`)];
  mkdirSync(club);
  spawnSync(house.demo.program, ["ledger", "new", "--ledger", ledger]);
  return { ledger, club };
}

async function fromNothing(house) {
  const { ledger, club } = nothingYet(house, "new");
  return withDesk(house, { signed_in: false, folder: ledger, flags: ["--plan-from", club] }, async (desk) => {
    const lee = await firstLead(house, ledger, desk.people.nobody());
    const page = await desk.window({ cookie: lee.cookie });
    const out = [];
    const began = Date.now();
    await desk.at("#/set-up", page);
    await page.getByLabel("The club's name").fill("Mossbank Rovers");
    await page.getByLabel("The season begins").fill(kSeasonFrom);
    await page.getByLabel("Its last day").fill("2027-06-27");
    await page.getByLabel("First Monday of the block").fill("2026-11-30");
    await page.getByRole("button", { name: "Add a holiday" }).click();
    await page.getByLabel("Name", { exact: true }).fill("Winter break");
    await page.getByLabel("From", { exact: true }).fill("2026-12-21");
    await page.getByLabel("To, with that day").fill("2026-12-27");
    await desk.picture("set-up-season", page);
    out.push(await desk.faults(page));
    await step(page, "Places");
    await page.getByLabel("A new place").fill("North end");
    await page.getByRole("button", { name: "Add the place" }).click();
    await page.getByLabel("Lanes", { exact: true }).fill("3");
    await page.getByRole("img", { name: "3 lanes of 15 m, a cone every 5 m" }).waitFor();
    await desk.picture("set-up-places", page);
    out.push(await desk.faults(page));
    await step(page, "Players");
    await upload(page, players({ wrong: "2014-13-45" }));
    await page.locator("section.sheet p", { hasText: /^24 rows$/ }).waitFor();
    await page.getByText("U13 Girls (8)").waitFor();
    // What is certainly wrong is told by its row before anything was sent.
    await page.getByText(/Row 10,.*there is no such day/).waitFor();
    await desk.picture("set-up-players", page);
    out.push(await desk.faults(page), that((await page.title()) !== "taken", "markup was run"));
    await step(page, "Squads");
    await page.getByRole("button", { name: "Make the 3 squads of the list" }).click();
    await page.locator("details", { hasText: "U16" }).getByRole("button", { name: "Add a match" }).click();
    await page.getByLabel("Day", { exact: true }).last().fill("2026-12-05");
    await page.getByLabel("Against").fill("Larkhollow Athletic");
    await desk.picture("set-up-squads", page);
    out.push(await desk.faults(page));
    await save(page);
    await page.getByText(/Players, row 10.*2014-13-45/).waitFor();
    await desk.picture("set-up-fault", page);
    out.push(await desk.faults(page));
    await page.getByRole("link", { name: "Mend it in Players" }).first().click();
    await page.locator(".to-mend input").first().fill("2014-05-12");
    await page.locator(".to-mend input").first().press("Tab");
    await page.locator(".to-mend").waitFor({ state: "detached" });
    await desk.picture("set-up-mended", page);
    await save(page);
    await page.getByText("Everything is saved.").waitFor();
    const took = Date.now() - began;
    await desk.picture("set-up-saved", page);
    const roster = readFileSync(join(club, "roster.csv"), "utf8");
    out.push(that(!/asthma|Medical/.test(roster), "a column that was left out came along"), that((await lee.get("/api/squads")).json.squads.length === 3, "not three squads"));
    await step(page, "Cards and coaches");
    await page.getByRole("button", { name: "Plan all squads" }).click();
    await page.getByRole("link", { name: "Print the cards of U16" }).waitFor({ timeout: 60_000 });
    await desk.picture("set-up-then", page);
    out.push(await desk.faults(page));

    out.push(await anotherList(desk, page, lee));
    await step(page, "Squads");
    const girls = page.locator("details", { hasText: "U13 Girls" });
    await girls.getByRole("button", { name: "Another evening" }).click();
    await save(page);
    await page.getByText("Everything is saved.").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await girls.getByRole("group", { name: "Evening 2" }).waitFor({ state: "detached" });
    out.push(await twoLeads(desk, page, lee));
    await page.getByRole("button", { name: "Español" }).click();
    for (const viewport of [kWide, kPhone]) {
      await page.setViewportSize(viewport);
      await desk.picture(`set-up-es-${viewport.width}`, page);
      out.push(await desk.faults(page));
    }
    return all(out, that(took < 600_000, `${took} ms`));
  });
}

export const setUp = [{ name: "set up: a club from nothing, a fault by its row, undone, and two leads at once", run: fromNothing }];
