// Drills as a person uses the screen: found, opened, changed, added, and taken away as a file that the program takes.
import { execFile, execFileSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { costOfFrames } from "../pitchside/frames.mjs";
import { all, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kWide, withDesk } from "./harness.mjs";

const kClub = new URL("../../demo/quillmere", import.meta.url).pathname;
const kCatalogue = new URL("../../catalogue", import.meta.url).pathname;
const kFrameMilliseconds = 8; // of the main thread
const program = (house) => house.demo.program;

// What is tried without a browser, each a file of Node's own tests.
const pure = (file, name) => ({
  name,
  run: (house) =>
    new Promise((told) => {
      const script = new URL(`${file}.mjs`, import.meta.url).pathname;
      execFile(process.execPath, [script, "--program", program(house)], { maxBuffer: 1 << 26 }, (failure, out, err) => told(failure ? `${out}${err}` : ""));
    }),
});

// What the checker of the command line says of the catalogue with this file in it.
function checked(house, name, toml) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-own-"));
  try {
    cpSync(kCatalogue, folder, { recursive: true });
    cpSync(toml, join(folder, "drills", name));
    execFileSync(program(house), ["catalogue", "--catalogue", folder, "check"], { encoding: "utf8" });
    return "";
  } catch (refused) {
    return `${refused.stdout}${refused.stderr}`;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function taken(page) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Download the TOML" }).click()]);
  return { name: download.suggestedFilename(), path: await download.path() };
}

const sound = (page) => page.locator('.verdict[aria-busy="false"]', { hasText: "It is sound: the catalogue takes it as it is." }).waitFor();

async function found(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills");
    await page.waitForSelector(".drill-list h3");
    const ready = Math.round(await page.evaluate(() => performance.now()));
    const count = () => page.locator(".drill-list li").count();
    const told = () => page.textContent(".head p");
    out.push(that((await count()) === 76, `${await count()} drills`), that(/^76 drills/.test(await told()), await told()));
    await page.waitForFunction(() => document.querySelectorAll(".drill-list svg[role=img]").length === 76);
    await page.waitForTimeout(100);
    await desk.picture("drills");
    out.push(await desk.faults(), that((await desk.shifts()) < 0.02, "the list jumps"));
    await page.getByLabel("Family").selectOption("hamstring");
    await page.getByLabel("For players of").selectOption("9");
    await page.waitForFunction(() => location.hash.includes("age=9"));
    const narrow = await count();
    out.push(that(narrow > 0 && narrow < 12, `${narrow} for the hamstrings at nine`));
    await page.goBack();
    await page.waitForFunction(() => !location.hash.includes("age="));
    out.push(that((await count()) > narrow, "going back takes nothing back"));
    await page.goForward();
    await page.reload();
    await desk.settled();
    out.push(that((await count()) === narrow, "a reload forgets the filters"));
    await page.getByRole("button", { name: "Show all" }).click();
    await page.getByLabel("Word that coaches say").fill("LAND soft");
    await page.waitForFunction(() => document.querySelectorAll(".drill-list li").length < 20);
    const soft = await count();
    out.push(that(soft > 0, "no cue says to land softly"));
    for (const said of kHostile) {
      await page.getByLabel("Word in it").fill(said);
      await page.getByText("No drill fits all of that").waitFor();
    }
    out.push(await desk.faults(), that((await page.title()) === "Drills · Lanework", await page.title()));
    return { detail: all(out, desk.said), note: `interactive after ${ready} ms` };
  });
}

async function opened(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills");
    await page.getByRole("link", { name: "Kneeling hamstring lower", exact: true }).click();
    await page.waitForSelector(".large-figure svg");
    const text = await page.textContent("main");
    for (const part of ["The ladder", "What to watch for", "Stop if", "Where it comes from", "Eccentric repetitions", "doi:10."]) out.push(that(text.includes(part), `nothing of '${part}'`));
    const doi = await page.getByRole("link", { name: /^doi:/ }).first().getAttribute("href");
    out.push(that(/^https:\/\/doi\.org\/10\./.test(doi), doi));
    const drawn = () => page.locator(".large-figure svg").first().innerHTML();
    const before = await drawn();
    await page.locator(".ladder button").nth(2).click();
    await page.waitForFunction((was) => document.querySelector(".large-figure svg")?.innerHTML !== was, before);
    out.push(that(/rung=/.test(page.url()), page.url()));
    await page.reload();
    await page.waitForSelector(".ladder [aria-pressed=true]");
    out.push(that((await page.locator(".ladder button").nth(2).getAttribute("aria-pressed")) === "true", "a reload forgets the rung"));
    // Reduced motion is asked for: it stands still until somebody lets it move.
    const still = await drawn();
    await page.waitForTimeout(400);
    out.push(that((await drawn()) === still, "it moves though less motion is asked for"));
    await desk.picture("drill-one");
    await page.emulateMedia({ media: "print" });
    out.push(that(await page.locator(".ladder").getByText("lean a little, then back up").isVisible(), "no ladder on paper"), that(!(await page.getByRole("button", { name: "Print" }).isVisible()), "a button on paper"));
    await page.emulateMedia({ media: "screen" });
    out.push(await desk.faults());
    await page.getByRole("button", { name: "Let it move" }).click();
    await page.waitForFunction((was) => document.querySelector(".large-figure svg")?.innerHTML !== was, still);
    const frames = await costOfFrames({ context: page.context() }, page, { slowdown: 1, seconds: 3 });
    out.push(that(frames.mean <= kFrameMilliseconds * house.patience && frames.count > 60, `${frames.count} frames of ${frames.mean} ms`));
    await page.goBack();
    await page.waitForSelector(".drill-list");
    await desk.at("#/drills/there-is-none");
    out.push(that(/There is no such drill/.test(await page.textContent("main h1")), await page.textContent("main h1")), await desk.faults());
    return { detail: all(out, desk.said), note: `a frame takes ${frames.mean.toFixed(1)} ms` };
  });
}

// Whom and what a drill has beside its figure is drawn: in the list, moving on its page, and where its poses are turned.
async function together(house) {
  return withDesk(house, { only_looks: true }, async (desk) => {
    const { page } = desk;
    const out = [];
    await page.emulateMedia({ reducedMotion: "no-preference" });
    const seen = (within = ".large-figure") =>
      page.evaluate((place) => {
        const svg = document.querySelector(`${place} svg`);
        return { order: [...svg.querySelectorAll("[data-body], [data-prop]")].map(({ dataset }) => dataset.body ?? "thing").join(" "), drawn: svg.innerHTML, partner: svg.querySelector("[data-body=partner]")?.innerHTML, things: [...svg.querySelectorAll("[data-prop]")].map((one) => one.getAttribute("transform")).join() };
      }, within);
    const kDrills = [
      ["pair-squat", "partner figure", { partner: true }],
      ["back-to-back-ball-pass", "partner figure thing", { things: true }],
      ["kneeling-hamstring-lower-at-bar", "thing thing thing thing figure", { things: false }],
      ["leg-swings-wall", "thing figure", { things: false }],
      ["kneeling-hamstring-lower", "partner figure", {}],
      ["one-leg-ball-throw", "partner figure thing", { things: true }],
      ["walking-lunge", "figure thing", { things: false }],
      ["shadow-a-partner", "partner figure", { partner: true }],
    ];
    for (const [id, order, moves] of kDrills) {
      await desk.at(`#/drills/${id}`);
      await page.waitForFunction((wanted) => location.hash.endsWith(wanted) && document.querySelector(".large-figure svg"), id);
      const first = await seen();
      await page.waitForTimeout(600);
      const later = await seen();
      out.push(that(first.order === order, `${id}: ${first.order}`), that(later.drawn !== first.drawn, `${id} stands still`));
      if (moves.partner) out.push(that(later.partner !== first.partner, `${id}: the partner stands still`));
      if (moves.things !== undefined) out.push(that((later.things !== first.things) === moves.things, `${id}: its things go from ${first.things} to ${later.things}`));
      await desk.picture(`drill-together-${id}`);
    }
    out.push(await desk.faults());
    for (const id of ["back-to-back-ball-pass", "kneeling-hamstring-lower-at-bar"]) {
      await desk.at(`#/drills/${id}?do=edit`);
      await page.waitForSelector(".pose-stage svg .handle");
      const stage = await seen(".pose-stage");
      out.push(that(stage.order.split(" ").filter((one) => one === "thing").length >= 1, `${id}: no things on the stage: ${stage.order}`));
      await page.locator(".pose-stage").scrollIntoViewIfNeeded();
      await desk.picture(`drill-together-edit-${id}`);
      out.push(await desk.faults());
    }
    await page.emulateMedia({ reducedMotion: "reduce" });
    await desk.at("#/drills/pair-squat");
    await page.reload();
    await page.waitForSelector(".large-figure svg [data-body=partner]");
    const still = await seen();
    await page.waitForTimeout(500);
    out.push(that((await seen()).drawn === still.drawn, "it moves though less motion is asked for"));
    return all(out);
  });
}

// The pose editor by the keyboard alone, and by dragging.
async function posed(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills/squat?do=edit");
    await sound(page);
    await page.locator(".pose-strip button").nth(1).click();
    const knee = page.getByRole("slider", { name: "Knee, near side" });
    const said = () => knee.getAttribute("aria-valuetext");
    await knee.focus();
    const before = Number(await knee.inputValue());
    await page.keyboard.press("ArrowRight");
    out.push(that(Number(await knee.inputValue()) === before + 1, `an arrow turns by ${Number(await knee.inputValue()) - before}`));
    await page.keyboard.press("PageUp");
    out.push(that(Number(await knee.inputValue()) === before + 6, "a page key does not turn by five"), that((await said()) === `${before + 6}° bent`, await said()));
    for (let press = 0; press < 40; press++) await page.keyboard.press("PageUp");
    out.push(that(Number(await knee.inputValue()) === 160, `past its limit: ${await knee.inputValue()}`));
    await page.keyboard.press("Control+z");
    out.push(that(Number(await knee.inputValue()) === before, `undone to ${await knee.inputValue()}`));
    await page.keyboard.press("Control+Shift+z");
    out.push(that(Number(await knee.inputValue()) === 160, "not done again"));
    await page.keyboard.press("Control+z");
    const handle = page.locator('.handle[data-angle="shoulder_near"]');
    await handle.scrollIntoViewIfNeeded();
    await page.waitForTimeout(200);
    const box = await handle.boundingBox();
    const arm = page.getByRole("slider", { name: "Arm, near side" });
    const hung = Number(await arm.inputValue());
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (let step = 1; step <= 12; step++) await page.mouse.move(box.x + box.width / 2 - 3 * step, box.y + box.height / 2 - 9 * step);
    await page.mouse.up();
    await page.waitForTimeout(300);
    const lifted = Number(await arm.inputValue());
    out.push(that(Math.abs(lifted - hung) > 10, `dragged from ${hung} to ${lifted}`), that(lifted >= -80 && lifted <= 190, `${lifted}`));
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    out.push(that(Number(await arm.inputValue()) === hung, "a drag is more than one step"));
    // What a pose is called does not turn the words about it round.
    for (const said of kHostile) {
      await page.locator("#field-figure-pose-2-label").fill(said);
      out.push(that((await page.locator(".poses details summary").first().textContent()) === `How ‘\u2068${said}\u2069’ stands`, `a pose called ${said}`), await desk.faults());
    }
    await page.locator("#field-figure-pose-2-label").fill("bottom");
    await page.getByRole("button", { name: "Add a pose after this one" }).click();
    out.push(that((await page.locator(".pose-strip li").count()) === 3, "no pose was added"));
    await page.getByRole("button", { name: "Exchange near and far" }).click();
    await page.getByRole("button", { name: "Add a pose seen from the front" }).click();
    await page.getByRole("slider", { name: "Thigh, its left" }).waitFor();
    await desk.picture("drill-pose-front");
    await sound(page);
    await page.locator(".pose-strip button").nth(1).click();
    await page.waitForTimeout(300);
    out.push(await desk.faults());
    await desk.picture("drill-poses");
    const file = await taken(page);
    out.push(that(file.name === "squat.toml", file.name), checked(house, file.name, file.path));
    // What was not saved is still there when the page is loaded again, and gone when it is thrown away.
    await page.reload();
    await page.locator(".pose-strip li").nth(3).waitFor();
    await page.getByRole("button", { name: "Throw the changes away" }).click();
    await page.waitForSelector(".one-drill");
    await page.goBack();
    await page.waitForSelector(".pose-strip li");
    out.push(that((await page.locator(".pose-strip li").count()) === 2, "thrown away, and still there"));
    return all(out);
  });
}

// The checker's line of a pose that is not on the screen brings it there.
async function ledTo(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills/kneeling-hamstring-lower?do=edit");
    await sound(page);
    const spoil = (change) =>
      page.evaluate((path) => {
        const place = "lanework-drill-kneeling-hamstring-lower";
        const drill = JSON.parse(sessionStorage.getItem(place));
        let at = drill;
        for (const key of path.slice(0, -2)) at = at[key] ??= {};
        at[path.at(-2)] = path.at(-1);
        sessionStorage.setItem(place, JSON.stringify(drill));
      }, change);
    await page.locator("#field-how").fill("Kneel; lower; push up.");
    await page.waitForFunction(() => sessionStorage.getItem("lanework-drill-kneeling-hamstring-lower") !== null);
    await spoil(["rung_figure", "all-the-way", "pose", 1, "partner", "angles", "knee", 999]);
    await spoil(["figure", "pose", 2, "contacts", ["nose"]]);
    await page.reload();
    await page.getByText("2 things are not yet as they should be").waitFor();
    const focused = () => page.evaluate(() => `${document.activeElement?.id} ${document.activeElement?.closest("[data-field]")?.dataset.field ?? ""}`);
    const line = (field) => page.locator(".verdict").getByRole("button", { name: field });
    await line("rung_figure.all-the-way.pose.2.partner.angles.knee").click();
    await page.waitForFunction(() => document.activeElement?.closest("[data-field]"));
    out.push(that(/rung_figure\.all-the-way\.pose\.2\.partner\.angles\.knee_/.test(await focused()), await focused()));
    await desk.picture("drill-fault-in-pose");
    await line("figure.pose.3.contacts").click();
    await page.waitForFunction(() => document.activeElement?.id === "field-figure-pose-3-contacts");
    out.push(that(/expected/.test(await page.locator("#field-figure-pose-3-contacts + .fault").textContent()), "nothing said below the field"), await desk.faults());
    return all(out);
  });
}

async function added(house) {
  return withDesk(house, {}, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills");
    await page.getByRole("link", { name: "Add a drill" }).click();
    await page.getByText(/things are not yet as they should be/).waitFor();
    await page.waitForSelector(".pose-stage svg"); // what is not sound yet is drawn all the same
    out.push(that((await page.locator(".handle").count()) === 15, "no joints to drag"), that(!(await page.textContent("main")).includes("cannot be drawn"), "a faulty name stops the drawing"));
    await desk.picture("drill-add-empty");
    out.push(await desk.faults());
    await page.getByLabel("Name", { exact: true }).fill("Wall hold, heel up");
    out.push(that((await page.getByLabel("Short name in files").first().inputValue()) === "wall-hold-heel-up", "no short name"));
    await page.getByLabel("What it is for").fill("Calves that carry you through the second half.");
    await page.locator("#field-how").fill("Lean on the wall with both hands, one heel up; hold.");
    await page.locator("#field-cues").fill("Tall through the hips\nPress the big toe");
    await page.locator("#field-stop_if").fill("Pain in the heel");
    await page.locator("#field-watch-1-fault").fill("heel sinks");
    await page.locator("#field-watch-1-cue").fill("higher");
    await page.locator("#field-rung-1-change").fill("both heels");
    await page.locator("#field-rung-2-change").fill("one heel");
    await sound(page);
    const good = await taken(page);
    out.push(that(good.name === "wall-hold-heel-up.toml", good.name), checked(house, good.name, good.path));
    // In lanes the dose is counted in passes; the form has what the format wants.
    await page.getByLabel("How players stand").selectOption("lane");
    await page.getByLabel("Way out").selectOption("run");
    await sound(page);
    await page.getByLabel("How players stand").selectOption("pairs");
    await sound(page);
    // A fault leads to its field.
    await page.getByLabel("To age").fill("4");
    await page.getByRole("button", { name: "ages.to" }).click();
    out.push(that((await page.evaluate(() => document.activeElement.id)) === "field-ages-to", "the fault leads elsewhere"), await desk.faults());
    // Below the field stand the words of the command line's own checker.
    const told = await page.locator("#field-ages-to-fault").textContent();
    const refused = checked(house, good.name, (await taken(page)).path);
    const [, found, expected] = /ages\.to: found (.*), expected (.*)/.exec(refused) ?? [];
    out.push(that(found !== undefined && told === `Found ${found}, expected ${expected}.`, `'${told}' in place of '${refused}'`));
    await page.getByLabel("To age").fill("oops");
    await page.getByText("That is no number.").waitFor();
    await page.getByLabel("To age").fill("19");
    await sound(page);
    for (const said of kHostile) {
      for (const field of ["name", "purpose", "how", "watch-1-fault", "watch-1-cue", "rung-1-change", "stop_if"]) await page.locator(`#field-${field}`).fill(said);
      await sound(page);
      const file = await taken(page);
      out.push(checked(house, file.name, file.path), that(readFileSync(file.path, "utf8").includes(said.split('"')[0].slice(0, 20)), `lost: ${said}`));
    }
    await page.waitForTimeout(200);
    out.push(await desk.faults(), that((await page.title()) !== "taken", "a script ran"));
    await desk.picture("drill-add-hostile");
    return all(out);
  });
}

// Saved in a club's folder of its own, by two leads at once, and taken back.
async function saved(house) {
  const club = mkdtempSync(join(tmpdir(), "lanework-club-"));
  cpSync(kClub, club, { recursive: true });
  const file = join(club, "drills/squat-own.toml");
  try {
    return await withDesk(house, { flags: ["--plan-from", club] }, async (desk) => {
      const { page } = desk;
      const out = [];
      const save = (on) => on.getByRole("button", { name: "Save for the club" });
      const saves = async (on) => {
        await sound(on);
        await save(on).click();
      };
      await desk.at("#/drills/squat?do=edit");
      await sound(page);
      out.push(that(await save(page).isDisabled(), "a shipped drill is written over"));
      await page.getByLabel("Name", { exact: true }).fill("Squat with a pause");
      await saves(page);
      await page.getByRole("heading", { name: "Squat with a pause", exact: true }).waitFor();
      out.push(that(page.url().includes("#/drills/squat-own"), page.url()), that(existsSync(file), "no file"), checked(house, "squat-own.toml", file));
      out.push(that(/catalogue = "\.\."/.test(readFileSync(join(club, "squads/u13-kestrels.toml"), "utf8")), "the squads are not told of it"));
      await desk.picture("drill-saved");
      out.push(await desk.faults());
      await page.getByRole("button", { name: "Undo", exact: true }).click();
      await page.waitForSelector(".drill-list li");
      out.push(that(!existsSync(file), "undone, and still there"), that(!/catalogue/.test(readFileSync(join(club, "squads/u13-kestrels.toml"), "utf8")), "the squads are still told"));

      await desk.at("#/drills/squat?do=edit");
      await page.reload();
      await page.getByLabel("Name", { exact: true }).fill("Squat with a pause");
      await saves(page);
      await page.getByRole("heading", { name: "Squat with a pause", exact: true }).waitFor();
      const other = await desk.window({ cookie: desk.caller.cookie });
      for (const each of [page, other]) {
        await each.goto(`${desk.url}#/drills/squat-own?do=edit`);
        await sound(each);
      }
      await page.locator("#field-how").fill("Sit down slowly; wait; stand up.");
      await page.locator("#field-purpose").fill("Legs that hold.");
      await saves(page);
      await page.getByText("Sit down slowly; wait; stand up.").waitFor();
      await other.locator("#field-how").fill("Sit, count to two, stand.");
      await other.locator("#field-cues").fill("Count aloud");
      await saves(other);
      await other.getByText("Somebody else saved it meanwhile.", { exact: false }).first().waitFor();
      out.push(that((await other.locator("#field-purpose").inputValue()) === "Legs that hold.", "what only the first changed is lost"));
      await desk.picture("drill-meanwhile", other);
      out.push(await desk.faults(other));
      await other.getByRole("button", { name: "Take theirs: how it is done" }).click();
      out.push(that((await other.locator("#field-how").inputValue()) === "Sit down slowly; wait; stand up.", "not theirs"));
      await saves(other);
      await other.getByText("Count aloud").waitFor();
      const written = readFileSync(file, "utf8");
      for (const said of ["Sit down slowly; wait; stand up.", "Legs that hold.", "Count aloud"]) out.push(that(written.includes(said), `lost: ${said}`));
      await other.getByRole("button", { name: "Undo", exact: true }).click();
      await other.getByText("Knees over the second toe").waitFor();
      out.push(that(!readFileSync(file, "utf8").includes("Count aloud") && readFileSync(file, "utf8").includes("Legs that hold."), "more or less than the last was taken back"));
      return all(out);
    });
  } finally {
    rmSync(club, { recursive: true });
  }
}

async function elsewhere(house) {
  return withDesk(house, { viewport: kWide, locale: "es-ES" }, async (desk) => {
    const { page } = desk;
    const out = [];
    await desk.at("#/drills");
    await page.getByRole("link", { name: "Sentadilla", exact: true }).waitFor();
    await page.waitForFunction(() => document.querySelectorAll(".drill-list svg[role=img]").length === 76);
    await desk.picture("drills-es-wide");
    out.push(await desk.faults());
    await page.getByRole("link", { name: "Sentadilla", exact: true }).click();
    await page.waitForSelector(".large-figure svg");
    await page.waitForTimeout(200);
    await desk.picture("drill-es-wide");
    out.push(await desk.faults());
    await page.getByRole("link", { name: "Modificarlo" }).click();
    await page.getByText("Está bien: el catálogo lo acepta tal como está.").waitFor();
    await page.waitForTimeout(300);
    await desk.picture("drill-edit-es-wide");
    out.push(await desk.faults());
    const phone = await desk.window({ viewport: kPhone, cookie: desk.caller.cookie });
    for (const hash of ["#/drills", "#/drills/side-plank", "#/drills/side-plank?do=edit"]) {
      await desk.at(hash, phone);
      await phone.waitForSelector("main svg");
      await phone.waitForTimeout(300);
      await desk.picture(`drill-phone-${hash.replaceAll(/\W+/g, "-")}`, phone);
      out.push(await desk.faults(phone));
    }
    out.push(that((await phone.getByLabel("Name", { exact: true }).count()) === 0 || !(await phone.getByLabel("Name", { exact: true }).isVisible()), "a field on a phone"));
    return all(out);
  });
}

export const drills = [
  pure("drills_pure", "drills: filters, ceilings, the form's own rules, the words"),
  pure("drills_toml", "drills: what is written is what was read"),
  { ...pure("drills_poses", "drills: key poses held against the door"), long: true },
  { name: "drills are found by what one has and needs", run: found },
  { name: "a drill is opened: ladder, faults, limits, sources", run: opened },
  { name: "drills: partners and things are drawn and move", run: together },
  { name: "drills: a fault in a pose leads to it, whichever figure it is of", run: ledTo },
  { name: "drills: a pose is turned by keys and by dragging, and taken back", run: posed },
  { name: "a drill is added, and the program takes the file", run: added },
  { name: "a drill is saved for the club by two leads at once, and taken back", run: saved },
  { name: "drills in Spanish, wide, and on a phone", run: elsewhere, long: true },
];
