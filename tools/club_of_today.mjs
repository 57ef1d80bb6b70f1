// A copy of a club's folder whose dates are moved by whole weeks, so that its block begins in the week of a day: what the
// demo serves, whatever day it is. Weekdays, matches and holidays keep their places, and nobody grows older.
// usage: node tools/club_of_today.mjs FROM TO [--day 2026-11-27]
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const kUsage = "usage: node tools/club_of_today.mjs FROM TO [--day 2026-11-27]";
const kDay = 86_400_000;
const iso = (time) => new Date(time).toISOString().slice(0, 10);
const mondayOf = (time) => time - ((new Date(time).getUTCDay() + 6) % 7) * kDay;

class Mistake extends Error {}

// '2026-11-23' and '23/11/2026', as the club's own tables have them.
function moved(text, by) {
  const shift = (year, month, day) => iso(Date.UTC(year, month - 1, day) + by);
  return text
    .replace(/(?<!\d)(\d{4})-(\d{2})-(\d{2})(?!\d)/g, (_, year, month, day) => shift(+year, +month, +day))
    .replace(/(?<!\d)(\d{2})\/(\d{2})\/(\d{4})(?!\d)/g, (_, day, month, year) => shift(+year, +month, +day).split("-").reverse().join("/"));
}

// A spreadsheet program may have written it in two bytes a sign.
function moveFile(file, by) {
  const bytes = readFileSync(file);
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  const text = bytes.toString(wide ? "utf16le" : "utf8");
  const after = moved(text, by);
  if (after !== text) writeFileSync(file, Buffer.from(after, wide ? "utf16le" : "utf8"));
}

function firstMonday(folder) {
  const file = join(folder, "club.toml");
  let text;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    throw new Mistake(`${file}: found no file that can be read (${error.code}), expected a club's folder`);
  }
  const found = /^first_monday = (\d{4}-\d{2}-\d{2})$/m.exec(text)?.[1];
  if (!found) throw new Mistake(`${file}: found no first_monday, expected the day on which its block begins`);
  return Date.parse(found);
}

// What was there before under that name goes, once the new one is whole.
export function clubOfTheWeek(from, to, day) {
  const today = Date.parse(day);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || Number.isNaN(today)) throw new Mistake(`--day: found '${day}', expected a date such as 2026-11-27`);
  const by = mondayOf(today) - firstMonday(from);
  const fresh = mkdtempSync(join(dirname(resolve(to)), "club-"));
  try {
    cpSync(from, fresh, { recursive: true });
    for (const name of readdirSync(fresh, { recursive: true })) if (/\.(toml|csv|txt)$/.test(name)) moveFile(join(fresh, name), by);
    rmSync(to, { recursive: true, force: true });
    renameSync(fresh, to);
  } catch (error) {
    rmSync(fresh, { recursive: true, force: true });
    throw error;
  }
}

function today() {
  const now = new Date();
  return iso(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
}

function main() {
  try {
    const { values, positionals } = parseArgs({ allowPositionals: true, options: { day: { type: "string", default: today() } } });
    if (positionals.length !== 2) throw new Mistake(kUsage);
    clubOfTheWeek(positionals[0], positionals[1], values.day);
  } catch (error) {
    if (!(error instanceof Mistake) && !error.code?.startsWith("ERR_PARSE_ARGS")) throw error;
    console.error(error instanceof Mistake ? error.message : `${error.message} (${kUsage})`);
    process.exit(2);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
