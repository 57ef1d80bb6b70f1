// The venue's action plan on the card, the incident's report and letter, the sealed emergency sheet: what is known stands
// there, what is missing is said, and what is sealed stands nowhere else.
import { existsSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { withClub } from "./club.mjs";

function textOf(pdf, ...words) {
  const said = spawnSync("pdftotext", [...words, "-layout", pdf, "-"], { encoding: "utf8" });
  return said.stdout.normalize("NFKC").replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "").replace(/\s+/g, " ");
}

const first = (...details) => details.find((detail) => detail !== "") ?? "";
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.err}${said.out.slice(0, 600)}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text.slice(0, 3000)}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text.slice(0, 3000)}` : "");
const kDay = ["--date", "2026-11-26"];
const kVenue = "venues/millrace.toml";

const care = (club, verb, file, ...words) => club.run("care", verb, club.path(file), ...kDay, "--out", club.out, ...words);
const withSquad = (club, verb, file, ...words) => care(club, verb, file, "--squad", club.squad, ...words);

const venue = [
  withClub("venue: the card's second side holds the plan and the danger signs", (club) => {
    const said = club.card();
    const back = textOf(`${club.out}/card.pdf`, "-f", "2");
    return first(status(said, 0), says(back, /Address Millrace Lane 9, Quillmere/), says(back, /Emergency number 112/), says(back, /Who calls the second coach/),
      says(back, /Danger signs/), says(back, /Call emergency services: collapse/), silent(back, /Plan incomplete|Fill in by hand|from memory/));
  }),
  withClub("venue: what a plan lacks is named in one line, and leaves a line to write on", (club) => {
    club.edit("squads/u13-kestrels.toml", "north-end", "school-hall");
    const said = club.card();
    const back = textOf(`${club.out}/card.pdf`, "-f", "2");
    return first(status(said, 0), says(back, /Plan incomplete: no defibrillator named, nobody minds the others, last rehearsal over a year ago\./),
      says(back, /Address School Rise 2/));
  }),
  withClub("venue: more than five missing are counted", (club) => {
    writeFileSync(club.path(kVenue), 'name = "Millrace ground"\n');
    const said = club.card();
    return first(status(said, 0), says(textOf(`${club.out}/card.pdf`), /Plan incomplete: no emergency number, no address, .*, and 10 more\./));
  }),
  withClub("venue: without a plan the form is filled in by hand", (club) => {
    club.edit("strips/north-end.toml", 'venue = "../venues/millrace.toml"\n', "");
    const said = club.card();
    return first(status(said, 0), says(textOf(`${club.out}/card.pdf`), /Fill in by hand before the season/), silent(textOf(`${club.out}/card.pdf`), /Millrace/));
  }),
  withClub("venue: cards of a week have it too, but that of a match away has lines to write on", (club) => {
    club.edit("squads/u13-kestrels.toml", 'date = 2026-12-05\n', 'date = 2026-12-05\nstart = 10:00:00\n');
    const said = club.run("cards", "--club", club.folder, "--catalogue", club.path("catalogue"), "--out", club.out, "--squad", "u13-kestrels", "--week", "2");
    const cards = said.status === 0 ? readdirSync(`${club.out}/u13-kestrels`).filter((name) => name.endsWith("-card.pdf")) : [];
    const home = cards.filter((name) => /Millrace Lane 9/.test(textOf(`${club.out}/u13-kestrels/${name}`)));
    const away = cards.filter((name) => /Fill in by hand/.test(textOf(`${club.out}/u13-kestrels/${name}`)));
    return first(status(said, 0), away.join() === "2026-12-05-card.pdf" ? "" : `by hand: ${away}`, home.length === cards.length - 1 && home.length > 0 ? "" : `${home} of ${cards}`);
  }),
];

const kPlanMistakes = [
  ["a venue's file that is not there", (c) => rmSync(c.path(kVenue)), /^strips\/\.\.\/venues\/millrace\.toml|venues\/millrace\.toml/],
  ["an unknown key of a venue", (c) => c.append(kVenue, 'nurse = "me"\n'), /venues\/millrace\.toml:\d+:1: roles\.nurse: found 'nurse', expected one of stays_with_player/],
  ["a date of a venue that is none", (c) => c.edit(kVenue, "last_rehearsal = 2026-09-05", 'last_rehearsal = "spring"'), /last_rehearsal: found 'spring', expected a date/],
  ["an address that nobody can read out", (c) => c.edit(kVenue, "Millrace Lane 9, Quillmere", "x".repeat(121)), /address: found 121 letters, expected at most 120/],
  ["a venue outside the club", (c) => c.edit("strips/north-end.toml", "../venues/millrace.toml", "../../../etc/venue.toml"), /north-end\.toml:\d+:1: venue: found '\.\.\/\.\.\/\.\.\/etc\/venue\.toml'/],
  ["a venue that is a number", (c) => c.edit("strips/north-end.toml", 'venue = "../venues/millrace.toml"', "venue = 4"), /north-end\.toml:\d+:1: venue: found 4, expected a file name/],
].map(([name, spoil, said]) =>
  withClub(`venue, bad input: ${name}`, (club) => {
    spoil(club);
    const found = club.card();
    return first(status(found, 2), found.lines.length === 1 ? "" : found.err, says(club.plain(found.lines[0] ?? ""), said), found.out === "" ? "" : found.out, club.wrote() ? "wrote" : "");
  }));

const kRules = /Local rules and licensed practice come first\. This sheet does not diagnose and does not clear anyone to play\./;
const kFor = /For the family and the clinician\./;

const papers = [
  withClub("care incident: filled from what is known, one page, on both papers", (club) => {
    for (const paper of ["a4", "letter"]) {
      const said = withSquad(club, "incident", "incident.toml", "--paper", paper);
      const text = said.status === 0 ? textOf(`${club.out}/incident.pdf`) : "";
      const info = said.status === 0 ? spawnSync("pdfinfo", [`${club.out}/incident.pdf`], { encoding: "utf8" }).stdout : "";
      const wrong = first(status(said, 0), says(text, /Fabrice-Noé Lefébure/), says(text, /Tuesday 24 November 2026/), says(text, /18:12/), says(text, /Millrace ground, Millrace Lane 9/),
        says(text, /Quillmere Juniors, Under-13 Kestrels/), says(text, /slipped on the wet grass/), says(text, /the mother, by phone, by the coach, 18:25/), says(text, kFor), says(text, kRules),
        says(info, /Pages: +1\n/), says(info, paper === "a4" ? /A4/ : /letter/), silent(info, /Fabrice/));
      if (wrong !== "") return wrong;
    }
    return "";
  }),
  withClub("care referral: what was seen, what is asked, never a diagnosis", (club) => {
    const said = withSquad(club, "referral", "incident.toml");
    const text = said.status === 0 ? textOf(`${club.out}/referral.pdf`) : "";
    return first(status(said, 0), says(text, /holds the left wrist still/), says(text, /It is no diagnosis/), says(text, /No diagnosis is asked for/), says(text, /May the player take part/),
      says(text, /What must be avoided/), says(text, /Until \(day\)/), says(text, /Clearance, by name, for the gates ticked and no other/), says(text, /knock to the head/),
      says(text, /A gate that is not ticked stays shut/), says(text, kFor), says(text, kRules), silent(text, /\b(sprain|fracture|concussion|safe to play|fit to play|cleared)\b/i));
  }),
  withClub("care incident: without a squad the id stands, and what is not known is left to write on", (club) => {
    writeFileSync(club.path("short.toml"), 'player = "Q06"\ndate = 2026-11-24\n');
    const said = care(club, "incident", "short.toml");
    const text = said.status === 0 ? textOf(`${club.out}/incident.pdf`) : "";
    return first(status(said, 0), says(text, /Player Date Q06 Tuesday/), says(text, /In the reporter's words/), silent(text, /Fabrice|Kestrels|Millrace/));
  }),
  withClub("care incident: nobody's name in what is printed to the screen or in a file's name, and the file is the owner's", (club) => {
    const said = withSquad(club, "incident", "incident.toml");
    const mode = said.status === 0 ? statSync(`${club.out}/incident.pdf`).mode & 0o777 : 0;
    return first(status(said, 0), silent(said.out + said.err, /Fabrice|Lef|Q06|wrist/), mode === 0o600 ? "" : mode.toString(8), readdirSync(club.out).join() === "incident.pdf" ? "" : readdirSync(club.out).join());
  }),
];

// An incident of who is on the way back; entries of the demo.
const onTheWayBack = (club) => club.edit("incident.toml", 'player = "Q06"', 'player = "Q16"');
const entered = (club, verb, ...words) => withSquad(club, verb, "incident.toml", "--entries", club.path("entries.toml"), "--catalogue", club.path("catalogue"), ...words);
const pageOf = (club, verb) => textOf(`${club.out}/${verb}.pdf`);
function enteredPage(club, verb) {
  const said = entered(club, verb);
  return said.status === 0 ? pageOf(club, verb) : said.err;
}
const kOnlyKnown = /Known before|For the clinician's eyes|concussion|nothing that was entered/;

const knownBefore = ["incident", "referral"].flatMap((verb) => [
  withClub(`care ${verb}: what was entered before it stands there for the clinician, with its age`, (club) => {
    onTheWayBack(club);
    const said = entered(club, verb);
    const text = said.status === 0 ? pageOf(club, verb) : "";
    return first(status(said, 0), says(text, /Known before/), says(text, /For the clinician's eyes/), says(text, /As known Tuesday 24 November 2026 18:05, the same day\./),
      says(text, /head; told Monday 16 November 2026 19:40, 8 days before/), says(text, /return after concussion: step 3 of 6, 'sport-specific exercise alone, without any risk to the head', begun Tuesday 24 November 2026 17:50, the same day; held back meanwhile: no contact, only light jumping, twisting or fast running; still shut: clearance before any risk of a knock to the head, clearance to contact/),
      silent(text, /still shut: a clinician has seen/), says(text, kRules), silent(said.out + said.err, /concussion|head|Halewick/), (statSync(`${club.out}/${verb}.pdf`).mode & 0o777) === 0o600 ? "" : "others may read it");
  }),
  withClub(`care ${verb}: a restriction with what it is for, and what came after the incident is left out`, (club) => {
    club.edit("incident.toml", 'player = "Q06"', 'player = "Q14"');
    const text = enteredPage(club, verb);
    club.edit("incident.toml", 'player = "Q14"', 'player = "Q07"');
    const later = enteredPage(club, verb);
    return first(says(text, /no jumping, no sharp turns until 3 Dec; set for knee against impact, twist, Friday 20 November 2026 19:00, 4 days before/),
      says(later, /Other restrictions and soreness, and since when nothing that was entered/), silent(later, /knee|5 of 10/));
  }),
  withClub(`care ${verb}: where the time is not known entries of that day are left out, and it says so`, (club) => {
    onTheWayBack(club);
    club.edit("incident.toml", "time = 18:12:00\n", "");
    const text = enteredPage(club, verb);
    return first(says(text, /As known Sunday 22 November 2026 20:10, 2 days before\. The time of the incident is not known: entries of that day are left out\./),
      says(text, /step 2 of 6, 'easy aerobic exercise, then moderate'/));
  }),
  withClub(`care ${verb}: the return rules that the club names hold`, (club) => {
    onTheWayBack(club);
    const shipped = readFileSync(club.path("catalogue/care/return_rules.toml"), "utf8");
    writeFileSync(club.path("return-rules.toml"), shipped.replace('name = "return after concussion"', 'name = "return as our place has it"'));
    club.append("club.toml", '\n[care]\nreturn_rules = "return-rules.toml"\n');
    return says(enteredPage(club, verb), /return as our place has it: step 3 of 6/);
  }),
  withClub(`care ${verb}: without entries the page is as it was`, (club) => {
    onTheWayBack(club);
    const said = withSquad(club, verb, "incident.toml");
    return first(status(said, 0), silent(pageOf(club, verb), kOnlyKnown));
  }),
  ...[["a file that is not there", () => {}, "nowhere.toml", /nowhere\.toml/],
    ["an entry that is none", (c) => c.append("entries.toml", '\n[[entry]]\nid = "x"\nreceipt = 99\nreceived = "2026-11-24T17:00Z"\nby = "coach"\nplayer = "Q16"\nkind = "cured"\n'), "entries.toml", /entries\.toml:\d+:1: entry\.\d+\.kind: found 'cured', expected one of hurt/],
    ["rules of care that are broken", (c) => c.edit("catalogue/care/pain.toml", "days_to = 10", "days_to = 100"), "entries.toml", /pain\.toml:12:1: trend\.days_to: found 100/],
  ].map(([name, spoil, file, wanted]) => withClub(`care ${verb} --entries, bad input: ${name}`, (club) => {
    spoil(club);
    const said = withSquad(club, verb, "incident.toml", "--entries", club.path(file), "--catalogue", club.path("catalogue"));
    return first(status(said, 2), said.lines.length === 1 ? "" : said.err, says(said.lines[0] ?? "", wanted), said.out, club.wrote() ? "wrote" : "");
  })),
]);

const nothingOfItForACoach = withClub("care incident: of what the clinician is told nothing stands on anything a coach carries", (club) => {
  onTheWayBack(club);
  club.edit("squads/u13-kestrels.toml", 'away = ["Q03", "Q16"]', 'away = ["Q03"]');
  const answers = [entered(club, "incident"), entered(club, "referral"), club.card("--entries", club.path("entries.toml"))];
  const bad = answers.find((answer) => answer.status !== 0);
  if (bad) return bad.err;
  const told = /concussion|Known before|still shut|clinician's eyes|step \d of 6|2026 19:40/;
  return first(says(pageOf(club, "incident"), told), ...["card", "slip"].map((name) => silent(pageOf(club, name), told)), silent(answers[2].out + answers[2].err, told),
    ...readdirSync(club.out).filter((name) => name.endsWith(".svg")).map((name) => silent(readFileSync(`${club.out}/${name}`, "utf8"), told)));
});

const kIncidentMistakes = [
  ["no file", () => {}, "nowhere.toml", /nowhere\.toml/],
  ["a player of another squad", (c) => c.edit("incident.toml", '"Q06"', '"W04"'), "incident.toml", /incident\.toml: player: found 'W04', expected a player of .*u13-kestrels\.toml$/],
  ["an incident of tomorrow", (c) => c.edit("incident.toml", "date = 2026-11-24", "date = 2026-11-27"), "incident.toml", /date: found 2026-11-27, expected a day not after 2026-11-26/],
  ["no day", (c) => c.edit("incident.toml", "date = 2026-11-24\n", ""), "incident.toml", /date: found nothing, expected the day it happened/],
  ["a diagnosis", (c) => c.edit("incident.toml", "time =", 'diagnosis = "x"\ntime ='), "incident.toml", /diagnosis: found 'diagnosis', expected one of player, date/],
  ["a story as a list", (c) => c.edit("incident.toml", 'signs = ["', 'signs = "fell badly"\nplace2 = ["'), "incident.toml", /place2|signs/],
].map(([name, spoil, file, said]) =>
  withClub(`care incident and referral, bad input: ${name}`, (club) => {
    spoil(club);
    return first(...["incident", "referral"].map((verb) => {
      const found = withSquad(club, verb, file);
      const many = name === "a story as a list";
      return first(status(found, 2), many || found.lines.length === 1 ? "" : found.err, says(found.lines[0] ?? "", said), silent(found.err, /fell badly/), found.out, club.wrote() ? "wrote" : "");
    }));
  }));

// Guardians, phones and what families told, of every row of the demo's sheet.
function sealedWords() {
  const rows = readFileSync("demo/quillmere/emergency.csv", "utf8").trim().split("\n").slice(1);
  return rows.flatMap((row) => row.split(";").slice(1, 6)).filter((cell) => cell.length > 3 && cell !== "none known").map((cell) => cell.normalize("NFKC"));
}

const sealed = [
  withClub("emergency sheet: of the squad, with a consent that stands; the others are counted and not named", (club) => {
    const said = withSquad(club, "emergency-sheet", "emergency.csv");
    const pdf = `${club.out}/emergency-sheet.pdf`;
    const text = said.status === 0 ? textOf(pdf) : "";
    const cover = said.status === 0 ? textOf(pdf, "-l", "1") : "";
    return first(status(said, 0), says(text, /Amara Okonjo-Bellweather/), says(text, /\+44 7700 900101/), says(text, /Allergy: hazelnut, carries a pen/), says(text, /林小雨/),
      says(text, /Inhaler: not stated/), silent(text, /Ewa|900105|wasp|Γιάννης|900107|penicillin|Pepe|900110|lenses|900112|purple|Merrow|900204/),
      says(cover, /Open only in an emergency\. Give back to the lead\. Destroy after the season\./), says(cover, /Printed Thursday 26 November 2026\. Expires Wednesday 24 February 2027/),
      says(cover, /6 players stand inside/), says(cover, /12 players are not named/), silent(cover, /Amara|7700|hazelnut/),
      says(said.out, /6 of 18 players; 12 without a consent/), silent(said.out + said.err, /Amara|7700|hazelnut|Q0/),
      (statSync(pdf).mode & 0o777) === 0o600 ? "" : "others may read it", readdirSync(club.out).join() === "emergency-sheet.pdf" ? "" : readdirSync(club.out).join());
  }),
  withClub("emergency sheet: a withdrawal takes the player out the same day", (club) => {
    club.edit("emergency.csv", "hazelnut, carries a pen in the red pouch;no;;2026-08-30;", "hazelnut, carries a pen in the red pouch;no;;2026-08-30;2026-11-26");
    const said = withSquad(club, "emergency-sheet", "emergency.csv");
    return first(status(said, 0), silent(textOf(`${club.out}/emergency-sheet.pdf`), /Sæthergård|900102|hazelnut/), says(said.out, /5 of 18 players; 13 without/));
  }),
  withClub("emergency sheet: nothing of it on card, slip, report, letter or any answer, nor in a file's name", (club) => {
    const said = club.card();
    const answers = [said, club.plan(), club.plan("--json"), withSquad(club, "incident", "incident.toml"), withSquad(club, "referral", "incident.toml"), withSquad(club, "emergency-sheet", "emergency.csv")];
    const bad = answers.find((answer) => answer.status !== 0);
    if (bad) return bad.err;
    const pages = ["card", "slip", "incident", "referral"].map((name) => textOf(`${club.out}/${name}.pdf`));
    const pictures = readdirSync(club.out).filter((name) => name.endsWith(".svg")).map((name) => readFileSync(`${club.out}/${name}`, "utf8").normalize("NFKC"));
    const shown = [...pages, ...pictures, ...answers.map((answer) => (answer.out + answer.err).normalize("NFKC")), readdirSync(club.out).join("\n")];
    const words = sealedWords();
    const found = words.filter((word) => shown.some((text) => text.includes(word)));
    const sheet = textOf(`${club.out}/emergency-sheet.pdf`);
    return first(words.length > 25 ? "" : "too few words were looked for", sheet.includes("+44 7700 900101") ? "" : "the sheet itself is empty", found.length === 0 ? "" : `${found}`);
  }),
  withClub("emergency sheet: nobody who consented is status 1, and nothing is written", (club) => {
    writeFileSync(club.path("none.csv"), "player,guardian,phone,consent,withdrawn\nQ01,Ann,07700 900101,,\n");
    const said = withSquad(club, "emergency-sheet", "none.csv");
    return first(status(said, 1), says(said.out, /nothing is written/), silent(said.out + said.err, /Ann|07700/), existsSync(club.out) ? "wrote" : "");
  }),
];

const kRow = "player,guardian,phone,allergy,consent,withdrawn\n";
const kSheetMistakes = [
  ["a phone that is none", `${kRow}Q01,Ann,ask nan,nut,2026-08-30,\n`, [], /bad\.csv:2: phone: found a cell that is not shown here, expected a phone number/],
  ["no guardian", `${kRow}Q01,,07700 900101,nut,2026-08-30,\n`, [], /bad\.csv:2: guardian: found an empty cell/],
  ["a day of consent that is none", `${kRow}Q01,Ann,07700 900101,nut,2026-02-30,\n`, [], /bad\.csv:2: consent: found a cell that is not shown here/],
  ["a player twice", `${kRow}Q01,Ann,07700 900101,nut,2026-08-30,\nQ01,Ann,07700 900101,nut,2026-08-30,\n`, [], /bad\.csv:3: player: found a cell that is not shown here, expected each player once/],
  ["a separator without quotation marks", `${kRow}Q01,Ann,07700 900101,nut,milk,2026-08-30,,\n`, [], /bad\.csv/],
  ["no consent column", "player,guardian,phone\nQ01,Ann,07700 900101\n", [], /bad\.csv:1: found no column 'consent'/],
  ["an expiry before the day", `${kRow}Q01,Ann,07700 900101,nut,2026-08-30,\n`, ["--expires", "2026-11-26"], /^--expires: found 2026-11-26, expected a day after 2026-11-26/],
  ["an expiry in two years", `${kRow}Q01,Ann,07700 900101,nut,2026-08-30,\n`, ["--expires", "2028-11-26"], /^--expires: found 2028-11-26/],
].map(([name, sheet, words, said]) =>
  withClub(`emergency sheet, bad input: ${name}`, (club) => {
    writeFileSync(club.path("bad.csv"), sheet);
    const found = withSquad(club, "emergency-sheet", "bad.csv", ...words);
    const several = /column|separator/.test(name);
    return first(status(found, 2), several || found.lines.length === 1 ? "" : found.err, says(found.lines[0] ?? "", said), silent(found.err, /Ann|07700|nut|ask nan|milk/), found.out, club.wrote() ? "wrote" : "");
  }));

export const careVenue = [...venue, ...kPlanMistakes, ...papers, ...knownBefore, nothingOfItForACoach, ...kIncidentMistakes, ...sealed, ...kSheetMistakes];
