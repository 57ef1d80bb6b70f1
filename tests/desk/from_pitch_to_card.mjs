// A missed week, a new hamstring injury and a knee complaint, from the pitch to the card: the coach's phone tells of it on an
// evening with no signal; Week shows each with what to do about it; the lead writes the injury down; the block is planned anew;
// the card that lies on the grass and the slip for the coach's pocket have what follows from it.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pair } from "../serve/every_route.mjs";
import { all, entry, entryId, is, kDay, that } from "../serve/expect.mjs";
import { CoachesPhone, tonightFault } from "./coaches_phone.mjs";
import { withDesk } from "./harness.mjs";
import { planned } from "./planned.mjs";
import { codesOnPaper } from "./qr.mjs";
import { firstLead, newLedger, smallClub } from "./small_club.mjs";

const kPictures = process.env.LANEWORK_PICTURES;
const kSquad = "u13-kestrels";
const kHurt = { player: "Q11", name: "林小雨", place: "Thigh, back" };
const kSore = { player: "Q07", name: "Γιάννης Πεταλούδης", place: "Knee" };
const kThere = 16; // of 18: two are away
const dayAfter = (day, days) => new Date(Date.parse(`${day}T12:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

// What a printed page says, in its own order.
function textOf(house, answer, name) {
  const file = kPictures ? join(kPictures, `desk-story-${name}`) : house.demo.file(name); // for whoever wants to look
  writeFileSync(file, answer.bytes);
  const { status, stdout, stderr, error } = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  if (status !== 0) throw new Error(`pdftotext (poppler-utils): ${error?.message ?? stderr}`);
  return stdout;
}

// The Kestrels train today, whatever day it is, and on one of the club's own days. Days of the week from Monday, 0 to 6.
const kWeekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];
const [kTuesday, kThursday] = [1, 3];
const kToday = (new Date(kDay).getUTCDay() + 6) % 7;
const kOfKestrels = kToday === kThursday ? [kTuesday, kThursday] : [kToday, kThursday];

function trainsToday(club) {
  const file = join(club, `squads/${kSquad}.toml`);
  writeFileSync(file, readFileSync(file, "utf8").replace(/weekday = "tuesday"/, `weekday = "${kWeekdays[kOfKestrels[0]]}"`));
}

// The coach as whoever told of the first weeks: what is over is told by no screen of the phone.
async function earlier(lead, desk) {
  const added = await lead.post("/api/accounts", { sign_in: "cora", name: "Cora", role: "coach", charges: [{ squad: kSquad }, { squad: "u10-wrens" }, { squad: "u16-merlins" }] });
  const { caller } = await pair(lead, desk.people, added.json.account);
  let sequence = 0;
  const send = async (...entries) => {
    const numbered = entries.map((one) => ({ ...one, sequence: ++sequence }));
    const answer = await caller.post("/api/sync", { client: 1, most: 0, entries: numbered });
    const not = answer.json?.verdicts?.find(({ verdict }) => verdict !== "stored");
    return all(is(answer, 200), that(!not, JSON.stringify(not)));
  };
  return { send };
}

// Of the two weeks, as long as they are over.
function evenings(start, weekdays = [kTuesday, kThursday]) {
  const monday = dayAfter(kDay, -kToday - 7);
  return weekdays.flatMap((day) => [day, day + 7]).map((days) => ({ date: dayAfter(monday, days), start })).filter(({ date }) => date < kDay);
}

const blockOf = async (lead) => (await lead.get(`/api/squads/${kSquad}/plan`)).json.plan.squads[0];
const overIn = (block) => block.sessions.filter(({ date }) => date < kDay);

// By the lead, on the evening's own page; the first time taken back too, and told again.
async function didNotTakePlace(desk, page, { date, start }, look) {
  await desk.at(`#/squad/${kSquad}?session=${date}-${start.replace(":", ".")}`, page);
  const tell = page.getByRole("button", { name: "Write down what came of it…" });
  const enter = page.getByRole("button", { name: "Write it down" });
  await tell.click();
  await enter.click();
  await page.getByText("Choose one.").waitFor(); // nothing is told by a form that was not filled in
  await page.getByLabel("was cut short").check();
  await page.getByLabel("half did it").check();
  await enter.click();
  await page.getByText("A whole number from 1 to 240.").waitFor();
  await page.getByLabel("Minutes of warm-up").fill("9");
  await enter.click();
  await page.getByText("It was cut short, half did it, 9 min.", { exact: false }).waitFor();
  await page.getByRole("button", { name: "Undo" }).first().click();
  await page.getByText("Nobody has said a word of this evening.").waitFor();
  await tell.click();
  await page.getByLabel("did not take place").check();
  await page.getByLabel("A note").fill("The pitch was under water.");
  await look();
  await enter.click();
  await page.getByText("It did not take place.").waitFor();
  const { json } = await desk.caller.get(`/api/week/${dayAfter(kDay, -kToday - 7)}`);
  const entered = json.evenings.find((one) => one.squad === kSquad && one.day === date && one.start === start);
  return that(entered?.happened === "missed" && entered.did_it === undefined && entered.minutes === undefined && entered.note === "The pitch was under water.", JSON.stringify(entered));
}

async function story(house) {
  const [ledger, club] = [house.demo.file("story-ledger"), house.demo.file("story-club")];
  smallClub(club, kDay);
  trainsToday(club);
  newLedger(house.demo.program, ledger, club);
  return withDesk(house, { signed_in: false, folder: ledger, flags: ["--plan-from", club] }, async (desk) => {
    const lead = await firstLead(house.demo.program, ledger, desk.people.nobody());
    desk.caller = lead;
    const page = await desk.window({ cookie: lead.cookie });
    const out = [];
    const step = async (name) => {
      await desk.picture(`story-${name}`, page);
      out.push(await desk.faults(page));
    };
    const { send } = await earlier(lead, desk);

    // 0. What is over was wrapped up as held, but for the Kestrels' first week, of which nobody has said a word.
    const at = ({ date, start }, squad = kSquad) => ({ squad, day: date, start });
    const told = { "u10-wrens": evenings("17:15"), [kSquad]: evenings("18:00", kOfKestrels).filter(({ date }) => date >= dayAfter(kDay, -kToday)), "u16-merlins": evenings("19:15") };
    const minutes = { "u10-wrens": 15, [kSquad]: 20, "u16-merlins": 20 };
    const wrapped = Object.keys(minutes).flatMap((squad) => told[squad].map((session) => entry("wrap-up", { ...at(session, squad), happened: "held", did_it: "most", minutes: minutes[squad] })));
    out.push(await send(...wrapped, ...wrapped.map(({ squad, day, start }) => entry("attendance", { squad, day, start, there: 12 }))));
    await planned(desk);
    const before = await blockOf(lead);

    // 1. The lead has it from the Kestrels' coach: that week did not take place.
    const week_one = overIn(before).filter(({ week }) => week === 1);
    out.push(that(week_one.length === 2, `${week_one.length} evenings of the first week`));
    for (const [nth, session] of week_one.entries()) out.push(await didNotTakePlace(desk, page, session, () => step(`0-what-came-of-it-${nth + 1}`)));

    // 2. From the pitch, by the phone and with no signal: a knee is sore, the back of a thigh is hurt. Then there is signal again.
    const phone = await CoachesPhone.paired(desk, page, "Cora", (name, of) => desk.picture(`story-phone-${name}`, of));
    await phone.signal(false);
    await phone.openTonight();
    await phone.away(2);
    await phone.sore(kSore);
    await phone.run(2);
    await phone.hurt(kHurt);
    await phone.wrapUp();
    out.push(that((await lead.get(`/api/squads/${kSquad}`)).json.standing.every(({ word }) => word === "joins in"), "the club knew before there was signal"));
    await phone.signal(true);
    await phone.sends();
    out.push(...phone.out, await tonightFault(lead, kSquad, kThere));

    // 3. At the desk: the lead writes down the injury that the phone told of, by what the father says.
    await lead.post("/api/entries", { entries: [{ id: entryId(), kind: "consent", player: kHurt.player, purpose: "injury-record", by: "guardian", answer: "given", day: kDay }] });
    await desk.at("#/injuries?enter=new", page);
    await page.getByLabel("Squad", { exact: true }).selectOption(kSquad);
    await page.getByLabel("Player", { exact: true }).selectOption(kHurt.player);
    await page.getByRole("group", { name: "Back" }).getByRole("button", { name: "thigh, left" }).click();
    await page.getByText("Taken as: thigh, left").waitFor();
    await page.getByText("More that is known").click();
    await page.getByLabel("What it is").selectOption("muscle-injury");
    await step("1-injury-form");
    await page.getByRole("button", { name: "Enter it" }).click();
    await page.getByRole("heading", { name: "thigh, left" }).waitFor();
    await step("2-injury");

    // 4. Week: each stands there, with what to do about it.
    await desk.at("#/week", page);
    const decide = page.locator(".decisions");
    await decide.getByText("Not run 2 times", { exact: false }).waitFor();
    await step("3-week");
    const decisions = await decide.innerText();
    out.push(that(/Under-13 Kestrels/.test(decisions), decisions));
    out.push(that(/1 sits out/.test(decisions) && /1 joins in with swaps/.test(decisions), `neither who sits out nor who has swaps is to be decided: ${decisions}`));
    out.push(that(/New: 1 was hurt and 1 is sore, last on /.test(decisions), `it is not said what is new: ${decisions}`));
    out.push(that(!decisions.includes(kHurt.name) && !decisions.includes(kSore.name), "names in Week"));
    await page.getByRole("link", { name: "Week before" }).click();
    await page.getByText("The pitch was under water.", { exact: false }).first().waitFor();
    await step("4-week-before");
    out.push(that((await page.locator(".week-table tbody tr", { hasText: "Kestrels" }).getByText("Not run").count()) === 2, "two evenings that were not run"));
    await page.goBack();
    await decide.getByText("Not run 2 times", { exact: false }).waitFor();
    await page.getByRole("button", { name: "Under-13 Kestrels: who sits out or has swaps" }).click();
    await page.getByRole("dialog").locator("details").nth(1).waitFor();
    for (const summary of await page.getByRole("dialog").locator("summary").all()) await summary.click();
    const who = await page.getByRole("dialog").innerText();
    await step("5-who");
    out.push(that(who.includes(kHurt.name) && who.includes(kSore.name), who));
    await page.keyboard.press("Escape");

    // 5. The next block: planned anew, from what happened.
    await decide.getByRole("link", { name: "Open the squad: Under-13 Kestrels" }).click();
    await page.waitForSelector(".block-table");
    await page.getByRole("button", { name: "Plan it anew" }).click();
    await page.getByText("Under-13 Kestrels is planned anew.", { exact: true }).last().waitFor({ timeout: 40_000 });
    await page.waitForFunction(() => /missed week/.test(document.querySelector("[aria-labelledby=what-changed]")?.textContent ?? ""));
    await step("6-block");
    const block = await blockOf(lead);
    const next = block.sessions.find(({ date }) => date > kDay);
    const was = before.sessions.find(({ date, start }) => date === next.date && start === next.start);
    out.push(that(next.turnout === was.turnout - 1, `${was.turnout} were expected, now ${next.turnout}: whoever sits out is expected`));
    const usual = Math.min(...block.weeks.flatMap(({ families }) => families.filter(({ family }) => family === "trunk").map(({ target }) => target)));
    out.push(that(block.weeks.some(({ families }) => families.some(({ family, target }) => family === "trunk" && target > usual)), "no week makes up for the one that was missed"));
    out.push(that(/still owed/.test(await page.locator("[aria-labelledby=what-changed]").innerText()), "it is not said what is owed"));

    // 6. An evening of it: counts, and names by a click.
    await page.locator(".block-table thead a").nth(block.sessions.indexOf(next)).click();
    await page.waitForSelector(".evening-slip");
    await page.getByText("1 with swaps, 1 sit out", { exact: false }).waitFor();
    out.push(that(!(await page.locator(".evening-slip li").first().isVisible()), "names before they are asked for"));
    await page.getByText("Names: who does something else").click();
    await page.getByText("Names: who stands with whom").click();
    await step("7-evening");
    const slip_on_screen = await page.locator(".evening-slip").innerText();
    out.push(that(slip_on_screen.includes(kHurt.name) && slip_on_screen.includes(kSore.name), slip_on_screen));

    // 7. On paper.
    const path = `${next.date}-${next.start.replace(":", "")}`;
    const href = (name) => page.getByRole("link", { name }).getAttribute("href");
    out.push(that((await href("Card (PDF, no names)")).endsWith(`/card/${path}`) && (await href("Slip with names (PDF)")).endsWith(`/slip/${path}`), "other addresses of card and slip"));
    const card = await lead.get(await href("Card (PDF, no names)"));
    const slip = await lead.get(await href("Slip with names (PDF)"));
    out.push(is(card, 200), is(slip, 200));
    if (card.status !== 200 || slip.status !== 200) return all(out);
    const [of_card, of_slip] = [textOf(house, card, "card.pdf"), textOf(house, slip, "slip.pdf")];
    const roster = (await lead.get(`/api/squads/${kSquad}`)).json.roster;
    out.push(that(!roster.some(({ name, player }) => of_card.includes(name) || new RegExp(`\\b${player}\\b`).test(of_card)), "a name lies on the grass"));
    const monday = dayAfter(next.date, -((new Date(next.date).getUTCDay() + 6) % 7));
    const of_week = await lead.get(`/api/squads/${kSquad}/cards/${monday}`);
    const calendar = await lead.get(`/api/squads/${kSquad}/calendar`);
    out.push(is(of_week, 200), is(calendar, 200), that(!roster.some(({ name }) => textOf(house, of_week, "cards.pdf").includes(name) || calendar.text.includes(name)), "a name in the week's cards or in the calendar"));
    const codes = codesOnPaper(card.bytes);
    out.push(that(codes.length === 1 && of_card.includes(codes[0]) && !/[/:?]/.test(codes[0]), `the card's code says '${codes}', which is not what stands on it`));
    const of_all = codesOnPaper(of_week.bytes);
    out.push(that(of_all.length >= 2 && of_all.every((code) => textOf(house, of_week, "cards.pdf").includes(code)), `the codes of the week's cards say '${of_all}'`));
    out.push(that(calendar.text.includes(next.date.replaceAll("-", "")), "the calendar has not the next evening"));
    out.push(that(new RegExp(`\\b${next.turnout}\\b`).test(of_card), `the card does not reckon with ${next.turnout}: ${of_card}`));
    out.push(that(of_slip.includes(kSore.name) && of_slip.includes(kHurt.name), of_slip), that(/sits out, see a clinician/i.test(of_slip), of_slip));
    out.push(that(!/knee|thigh|hamstring injury|muscle injury/i.test(of_slip.replace(/kneeling|knees?[ -]/gi, "")), `a place of the body on the slip: ${of_slip}`));
    return all(out);
  });
}

export const fromPitchToCard = [{ name: "story: a missed week, an injury and a complaint, from the pitch to the card", run: story }];
