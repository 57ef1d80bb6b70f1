// Names of any script and cells of any kind on the pages: read back by what did not write them.
import { readFileSync, readdirSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { withClub } from "./club.mjs";

// pdftotext gives letters of joined scripts in their shapes and marks of direction; both are taken out.
function textOf(pdf) {
  const said = spawnSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" });
  return said.stdout.normalize("NFKC").replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "").replace(/\s+/g, " ");
}

const plain = (name) => name.normalize("NFKC").replace(/\s+/g, " ");

const kStrange = {
  Q01: "=HYPERLINK(1)",
  Q02: "<script>x</script>",
  Q04: "+1 @x",
  Q06: "&lt;b&gt; & Co",
  Q09: "]]><!--",
};

function withStrangeNames(club) {
  for (const [id, name] of Object.entries(kStrange)) {
    const line = readFileSync(club.path("roster.csv"), "utf8").split("\n").find((row) => row.startsWith(`${id};`));
    const cells = line.split(";");
    cells[1] = `"${name}"`;
    club.edit("roster.csv", line, cells.join(";"));
  }
}

export const pages = [
  withClub("cells like formulas and markup are inert in the slip", (club) => {
    withStrangeNames(club);
    const said = club.card();
    if (said.status !== 0) return said.err;
    const text = textOf(`${club.out}/slip.pdf`);
    const lost = Object.values(kStrange).filter((name) => !text.includes(plain(name)));
    if (lost.length > 0) return `not as written: ${lost}\n${text}`;
    for (const name of readdirSync(club.out).filter((file) => file.endsWith(".svg"))) {
      const svg = readFileSync(`${club.out}/${name}`, "utf8");
      if (/<script|<!--|javascript:|<foreignObject|\son\w+=/i.test(svg)) return `${name} has markup from a cell`;
    }
    return /\/(JavaScript|JS|Launch|OpenAction)\b/.test(readFileSync(`${club.out}/slip.pdf`, "latin1")) ? "the PDF acts" : "";
  }),
  withClub("names of every script stand in the slip", (club) => {
    const said = club.card();
    if (said.status !== 0) return said.err;
    const text = textOf(`${club.out}/slip.pdf`);
    const names = ["林小雨", "نورة القمري", "Γιάννης Πεταλούδης", "Лада Звонкович", "Çağla", "Hồ Thị Ngân Quỳnh", "Ørjan Þórbergsson", 'Iñaki "Pepe" Zubieta-Ñame', "Nia Llwyd-Pebble"];
    const away = new Set(["Çağla"]);
    const lost = names.filter((name) => text.includes(plain(name)) === away.has(name));
    return lost.length === 0 ? "" : `${lost}\n${text}`;
  }),
  withClub("the card names nobody", (club) => {
    const said = club.card();
    if (said.status !== 0) return said.err;
    const text = textOf(`${club.out}/card.pdf`);
    const rows = readFileSync(club.path("roster.csv"), "utf8").split("\n").filter((row) => /^[QW]\d\d;/.test(row));
    const named = rows.map((row) => plain(row.split(";")[1].replaceAll('"', ""))).filter((name) => text.includes(name));
    if (rows.length < 30) return "too few rows were looked for";
    return named.length === 0 ? "" : `${named}`;
  }),
  withClub("no mass, size group or birth date on card, slip or screen", (club) => {
    const rows = readFileSync(club.path("roster.csv"), "utf8").split("\n");
    const heading = rows.findIndex((row) => row.startsWith("Member No"));
    const masses = [];
    const edited = rows.map((row, index) => {
      if (index === heading) return row.replace("Remarks", "Weight (kg)");
      if (!/^[QW]\d\d;/.test(row)) return index < heading || row.startsWith("Total") ? row : "";
      masses.push(`${41 + (index % 17)}.${1 + (index % 9)}`);
      return row.split(";").slice(0, 7).concat(masses.at(-1)).join(";");
    });
    club.edit("roster.csv", rows.join("\n"), edited.join("\n"));
    club.edit("squads/u13-kestrels.toml", 'measure = "size-group"', 'measure = "body-mass"');
    const said = club.card();
    if (said.status !== 0) return said.err;
    const words = ["pairs", "--roster", club.path("roster.csv"), "--in-roster", "U13", "--date", "2026-11-26", "--measure", "body-mass"];
    const shown = [textOf(`${club.out}/card.pdf`), textOf(`${club.out}/slip.pdf`), club.plan().out, club.plan("--json").out, club.run(...words).out, club.run(...words, "--json").out];
    const births = rows.filter((row) => /^Q/.test(row)).map((row) => row.split(";")[2]);
    // With a sign before or after it, a number is another one: '41.5' is not in '141.52'.
    const stands = (text, secret) => new RegExp(`(?<![\\d.:])${secret.replace(".", "[.,]")}(?![\\d:])`).test(text);
    const found = [...masses, ...births, ...births.map((date) => date.split("/").reverse().join("-"))].filter((secret) => shown.some((text) => stands(text, secret)));
    return shown.some((text) => text.length < 200) ? "an output is missing" : found.length === 0 ? "" : `${found}`;
  }),
  withClub("letter paper is another size", (club) => {
    const size = () => /MediaBox \[ ([\d. ]+)/.exec(readFileSync(`${club.out}/card.pdf`, "latin1"))?.[1] ?? spawnSync("pdfinfo", [`${club.out}/card.pdf`], { encoding: "utf8" }).stdout.match(/Page size:.*/)[0];
    club.card();
    const a4 = size();
    club.card("--paper", "letter");
    return a4 === size() ? a4 : "";
  }),
];
