// A club of a hundred squads, this week: the demo's, and copies of those squads of it that its generator makes, each with
// strips, a roster, restrictions and a coach of its own.
import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { clubOfTheWeek } from "../../../tools/club_of_today.mjs";

const kMade = "# Made by tools/generate/quillmere.mjs.";
const kLetters = "QRSTUVWXYZ"; // of the players' ids, by copy
const kEndings = ["", "worth", "ford", "ley", "ham", "wick"]; // of their surnames, so that they are others
const kStrips = ["north-end", "school-hall", "south-side"];

const slotsOf = (text) => [...text.matchAll(/\[\[week\]\]\nweekday = "(\w+)"\nstart = (\d\d:\d\d)/g)].map(([, weekday, start]) => ({ weekday, start }));

// By id, of whoever has the squad's label in the roster.
function playersOf(roster, label) {
  return roster.split("\n").slice(1).map((line) => line.split(",")).filter(([, , , squads = ""]) => squads.split("/").includes(label)).map(([id]) => id);
}

// Of a squad's file.
function copyOf(text, nth) {
  return text
    .replace(/^name = "(.*)"$/m, (_, name) => `name = "${name} ${nth + 1}"`)
    .replace(/^in_roster = "(.*)"$/m, (_, label) => `in_roster = "${label} ${nth + 1}"`)
    .replace("../roster-club.csv", `../roster-club-${nth + 1}.csv`)
    .replace("../restrictions-club.toml", `../restrictions-club-${nth + 1}.toml`)
    .replace(/\.\.\/strips\/([\w-]+)\.toml/, (_, strip) => `../strips/${strip}-${nth + 1}.toml`);
}

// Of the roster, for these of its labels: other people under other ids.
function rosterCopy(roster, labels, nth) {
  const [heading, ...rows] = roster.trim().split("\n").map((line) => line.split(","));
  const own = rows.flatMap(([id, name, birth, squads, ...rest]) => {
    const mine = squads.split("/").filter((label) => labels.has(label));
    if (mine.length === 0 || !/^Q\d{3}$/.test(id)) return [];
    return [[id.replace("Q", kLetters[nth]), name + kEndings[nth], birth, mine.map((label) => `${label} ${nth + 1}`).join("/"), ...rest]];
  });
  return `${[heading, ...own].map((row) => row.join(",")).join("\n")}\n`;
}

// Of whoever is in the roster.
function restrictionsCopy(restrictions, roster, nth) {
  const [head, ...blocks] = restrictions.split("[[restriction]]");
  const own = blocks.map((block) => block.replace(/"Q(\d{3})"/, `"${kLetters[nth]}$1"`)).filter((block) => roster.includes(`\n${/player = "(\w+)"/.exec(block)[1]},`));
  return [head, ...own].join("[[restriction]]");
}

// Writes the folder; its squads with their evenings and players, those of the demo itself first.
export function bigClub(folder, { squads: wanted, day }) {
  clubOfTheWeek("demo/quillmere", folder, day);
  const read = (...path) => readFileSync(join(folder, ...path), "utf8");
  const write = (text, ...path) => writeFileSync(join(folder, ...path), text);
  const roster = read("roster-club.csv");
  const restrictions = read("restrictions-club.toml");
  const files = readdirSync(join(folder, "squads")).sort();
  const squadOf = (id, text, list, own) => ({ id, own, slots: slotsOf(text), players: list ? playersOf(list, /in_roster = "(.*)"/.exec(text)[1]) : [] });
  const out = files.map((file) => {
    const text = read("squads", file);
    return squadOf(basename(file, ".toml"), text, text.startsWith(kMade) ? roster : undefined, true);
  });
  const made = files.filter((file) => read("squads", file).startsWith(kMade));
  let strips = "";
  let coaches = "";
  for (let nth = 1; out.length < wanted; nth++) {
    const these = made.slice(0, wanted - out.length);
    const own = rosterCopy(roster, new Set(these.map((file) => /in_roster = "(.*)"/.exec(read("squads", file))[1])), nth);
    write(own, `roster-club-${nth + 1}.csv`);
    write(restrictionsCopy(restrictions, own, nth), `restrictions-club-${nth + 1}.toml`);
    for (const strip of kStrips) {
      cpSync(join(folder, "strips", `${strip}.toml`), join(folder, "strips", `${strip}-${nth + 1}.toml`));
      strips += `\n[[strip]]\nid = "${strip}-${nth + 1}"\nfile = "strips/${strip}-${nth + 1}.toml"\n`;
    }
    for (const file of these) {
      const id = `${basename(file, ".toml")}-${nth + 1}`;
      const text = copyOf(read("squads", file), nth);
      write(text, "squads", `${id}.toml`);
      coaches += `\n[[coach]]\nid = "Coach-${out.length + 1}"\nsquads = ["${id}"]\ntaught = []\n`;
      out.push(squadOf(id, text, own, false));
    }
  }
  const club = read("club.toml");
  const times = Math.ceil(wanted / files.length);
  write(`${club.replace(/^(cones|balls) = (\d+)$/gm, (_, what, count) => `${what} = ${times * count}`)}${strips}`, "club.toml");
  write(`${read("coaches.toml")}${coaches}`, "coaches.toml");
  return out;
}
