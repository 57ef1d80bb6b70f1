// 'catalogue check' reads the tables of care as the commands of care do: one of each broken is one clear line, told with
// its place, and so is a source that is nobody's.
import { renameSync, rmSync, writeFileSync } from "node:fs";
import { withClub } from "./club.mjs";

const kLine = String.raw`^catalogue\/care\/`;

// [table, the piece, what stands in its place, the line it gets]
const kBroken = [
  ["pain", "swaps_up_to = 3 ", "swaps_up_to = 1 ", /pain\.toml:5:1: swaps_up_to: found 1, expected a whole number from 2 to 10$/],
  ["pain", 'sources = ["thomee-1997", "own-judgement"]', 'sources = ["thomee-1979", "own-judgement"]', /pain\.toml:13:1: trend\.sources: found 'thomee-1979', expected a key of sources\.toml$/],
  ["return_rules", "least_hours = 24\nunverified", "least_hours = 6\nunverified", /return_rules\.toml:8:1: same_day\.least_hours: found 6, expected a whole number from 24 to 1440$/],
  ["return_rules", 'sources = ["patricios-2023", "own-judgement"]', 'sources = ["patricios-2032", "own-judgement"]', /return_rules\.toml:20:1: course\.1\.sources: found 'patricios-2032', expected a key of sources\.toml$/],
  ["growth", "fast_from_cm_a_year = 7.2", "fast_from_cm_a_year = 2.7", /growth\.toml:12:1: measuring\.fast_from_cm_a_year: found no more than slow, expected more than slow_below$/],
  ["growth", 'sources = ["cumming-2017"]', 'sources = ["cumming-2071"]', /growth\.toml:\d+:1: bands\.1\.sources: found 'cumming-2071', expected a key of sources\.toml$/],
  ["screens", 'wanted = "more"', 'wanted = "most"', /screens\.toml:15:1: test\.1\.wanted: found 'most', expected one of more, less, zero$/],
  ["screens", 'sources = ["springer-2007"]\n\n[[test]]', 'sources = ["springer-2070"]\n\n[[test]]', /screens\.toml:27:1: test\.1\.norm\.1\.sources: found 'springer-2070', expected a key of sources\.toml$/],
  ["heat_bands", "below = 26.0", "below = 23.0", /heat_bands\.toml:23:1: table\.1\.band\.2\.below: found no further than the band before, expected bands in careful order$/],
  ["heat_bands", 'source = "armstrong-2007"', 'source = "armstrong"', /heat_bands\.toml:47:1: table\.2\.source: found 'armstrong', expected a key of sources\.toml$/],
  ["cold_bands", 'default_region = "general"', 'default_region = "north"', /cold_bands\.toml:5:1: default_region: found 'north', expected a region of one of the tables$/],
  ["cold_bands", 'source = "cold-ladder-2020"', 'source = "cold-ladder-2002"', /cold_bands\.toml:10:1: table\.1\.source: found 'cold-ladder-2002', expected a key of sources\.toml$/],
  ["air_bands", 'standing = "read"', 'standing = "red"', /air_bands\.toml:11:1: table\.1\.standing: found 'red', expected one of read, read-second-hand, unverified$/],
  ["air_bands", 'source = "fine-particles-2024"', 'source = "coarse-particles-2024"', /air_bands\.toml:74:1: fine_particles\.source: found 'coarse-particles-2024', expected a key of sources\.toml$/],
];

const kTables = [...new Set(kBroken.map(([table]) => table))];

const check = (club) => club.run("catalogue", "--catalogue", club.path("catalogue"), "check");

function oneLine(club, pattern) {
  const said = check(club);
  const line = club.plain(said.lines[0] ?? "");
  if (said.status !== 2) return `exit status ${said.status}, not 2\n${said.out.slice(0, 300)}`;
  if (said.lines.length !== 1) return `${said.lines.length} lines\n${said.err}`;
  if (said.out !== "") return `on standard output: ${said.out}`;
  return pattern.test(line) && new RegExp(kLine).test(line) ? "" : `${line}\nis not ${pattern}`;
}

export const careCatalogue = [
  withClub("catalogue check: the shipped tables of care pass, and are counted", (club) => {
    const said = check(club);
    return said.status === 0 && said.out.includes(`, ${kTables.length} tables of care, `) ? "" : `${said.status}\n${said.out}${said.err}`;
  }),
  ...kBroken.map(([table, piece, by, line]) =>
    withClub(`catalogue check: care/${table}.toml with ${by.split("\n")[0].trim()}`, (club) => {
      club.edit(`catalogue/care/${table}.toml`, piece, by);
      return oneLine(club, line);
    })),
  ...kTables.map((table) =>
    withClub(`catalogue check: care/${table}.toml with a key that nobody reads`, (club) => {
      club.append(`catalogue/care/${table}.toml`, "\n[colour]\nshade = 1\n");
      return oneLine(club, new RegExp(String.raw`${table}\.toml:\d+:\d+: colour: found 'colour', expected one of `));
    })),
  withClub("catalogue check: a table of care that is not there", (club) => {
    rmSync(club.path("catalogue/care/cold_bands.toml"));
    return oneLine(club, /cold_bands\.toml: /);
  }),
  withClub("catalogue check: a file in care/ that nothing reads", (club) => {
    writeFileSync(club.path("catalogue/care/wind_bands.toml"), "default_region = 1\n");
    return oneLine(club, /wind_bands\.toml: found a file that nothing reads, expected one of air_bands\.toml, cold_bands\.toml, /);
  }),
  withClub("catalogue check: a table of care under another name is two lines, what lacks and what is too much", (club) => {
    renameSync(club.path("catalogue/care/pain.toml"), club.path("catalogue/care/pains.toml"));
    const said = check(club);
    return said.status === 2 && said.lines.length === 2 && /pain\.toml/.test(said.lines[0]) && /pains\.toml/.test(said.lines[1]) ? "" : said.err;
  }),
  withClub("catalogue check: faults of a routine and of care are told together", (club) => {
    club.edit("catalogue/routines/early-teens.toml", 'id = "easy-laps"', 'id = "moon-walk"');
    club.edit("catalogue/care/pain.toml", "days_to = 10", "days_to = 100");
    const said = check(club);
    return said.status === 2 && said.lines.length === 2 && /moon-walk/.test(said.lines[0]) && /trend\.days_to: found 100/.test(said.lines[1]) ? "" : said.err;
  }),
];
