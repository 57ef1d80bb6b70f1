// The turn of a season on the real server: squads a year on, players moved by the choice and by dragging, kept as one change
// with the same ids, coaches along, and all of it taken back.
import { all, that } from "../serve/expect.mjs";
import { kHostile, kPhone, kUsual, withDesk } from "./harness.mjs";
import { firstLead, nothingYet } from "./set_up.mjs";

const kSquads = [["u12", "U12", 2014], ["u13", "U13", 2013], ["u19", "U19", 2007]];
const kEach = 8;

const rows = kSquads.flatMap(([id, label, year]) =>
  Array.from({ length: kEach }, (_, at) => [`${id}-${at}`, id === "u12" && at === 0 ? kHostile[0] : `Player ${label} ${at}`, `${year + 1}-0${at + 1}-11`, label]));
const roster = `ID,Name,Date of birth,Squad\n${rows.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",")).join("\n")}\n`;

const club = {
  name: "Mossbank Rovers", season: { from: "2026-08-31", to: "2027-06-27" }, block: { first_monday: "2026-11-30", weeks: 6 }, strip: [{ id: "north-end", file: "strips/north-end.toml" }],
};
const place = { name: "North end", lane_length_metres: 15, cone_spacing_metres: 5, lanes: 2, lane_gap_metres: 3, area_metres: { width: 10, length: 15 }, surface: [], soft_ground: true };
const squad = (name, at) => ({
  club: club.name, name, roster: "../roster.csv", in_roster: name, routine: name === "U19" ? "older" : "early-teens", strip: "../strips/north-end.toml", kit: { cones: 16 }, taught: { squat: 5 },
  week: [{ weekday: "tuesday", start: `1${7 + at}:00:00`, minutes: 20 }],
});

async function turn(house) {
  const { ledger, club: folder } = nothingYet(house, "turn");
  return withDesk(house, { signed_in: false, folder: ledger, flags: ["--plan-from", folder] }, async (desk) => {
    const lee = await firstLead(house, ledger, desk.people.nobody());
    const made = await lee.post("/api/club/documents", {
      changes: [{ path: "club.toml", content: club }, { path: "strips/north-end.toml", content: place }, { path: "roster.csv", text: roster }, ...kSquads.map(([id, name], at) => ({ path: `squads/${id}.toml`, content: squad(name, at) }))],
    });
    await lee.post("/api/accounts", { sign_in: "robin", name: "Robin Sedge", role: "coach", charges: [{ squad: "u12" }] });
    const squadsOf = async () => Object.fromEntries((await lee.get("/api/players")).json.players.map(({ player, squads }) => [player, squads.join()]));
    const before = await squadsOf();
    const page = await desk.window({ cookie: lee.cookie });
    const out = [that(made.status === 200, made.text)];
    await desk.at("#/set-up/turn", page);
    await page.getByRole("button", { name: "Show next season's squads" }).click();
    await page.getByRole("region", { name: "U14" }).waitFor();
    for (const viewport of [kPhone, kUsual]) {
      await page.setViewportSize(viewport);
      await desk.picture(`turn-${viewport.width}`, page);
      out.push(await desk.faults(page));
    }
    const there = (name) => page.getByRole("region", { name, exact: true }).locator("[data-player]").evaluateAll((lines) => lines.map((line) => line.dataset.player));
    out.push(that((await there("U13")).length === kEach && (await there("U14")).length === kEach && (await there("No squad")).length === kEach, "not as it should go"), that((await page.title()) !== "taken", "markup was run"));
    await page.getByLabel("Player U13 1 goes to").selectOption("U13");
    out.push(that((await there("U13")).includes("u13-1"), "not moved by the choice"));
    const from = await page.locator("[data-player=u12-2] bdi").boundingBox();
    const to = await page.getByRole("region", { name: "U14", exact: true }).locator("h3").boundingBox();
    await page.mouse.move(from.x + 5, from.y + 5);
    await page.mouse.down();
    await page.mouse.move(to.x + 20, to.y + 5, { steps: 6 });
    await page.mouse.up();
    out.push(that((await there("U14")).includes("u12-2"), "not moved by dragging"));
    await page.getByLabel("Player U12 3 goes to").selectOption({ label: "leaves the club" });
    await page.getByRole("button", { name: "Undo" }).click();
    out.push(that((await there("U13")).includes("u12-3"), "not undone"));
    await desk.picture("turn-moved", page);
    await page.getByRole("button", { name: "Keep next season" }).click();
    await page.getByText(/The season from .* is there/).waitFor();
    await page.getByText("Robin Sedge: U13").waitFor();
    await desk.picture("turn-kept", page);
    out.push(await desk.faults(page));
    const after = await squadsOf();
    out.push(that(after["u12-0"] === "u13" && after["u12-2"] === "u14" && after["u13-0"] === "u14" && after["u13-1"] === "u13" && after["u19-0"] === undefined, JSON.stringify(after)));
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Show next season's squads" }).waitFor();
    out.push(that(JSON.stringify(await squadsOf()) === JSON.stringify(before), `not taken back: ${JSON.stringify(await squadsOf())}`));
    return all(out);
  });
}

export const seasonTurn = [{ name: "set up: the turn of a season, moved, kept and taken back", run: turn }];
