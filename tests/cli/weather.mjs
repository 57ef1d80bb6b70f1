// The weather's commands as the lead and the coach meet them: what they say of an evening, that an estimate never allows, that
// what is not known takes the careful side, and bad input.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { join } from "node:path";

const first = (...details) => details.find((detail) => detail !== "") ?? "";
const near = (found, wanted, tolerance) => (Math.abs(found - wanted) <= tolerance ? "" : `${found}, not ${wanted}`);
const says = (text, pattern) => (pattern.test(text) ? "" : `no ${pattern} in\n${text}`);
const silent = (text, pattern) => (pattern.test(text) ? `${pattern} in\n${text}` : "");
const status = (said, wanted) => (said.status === wanted ? "" : `exit status ${said.status}, not ${wanted}\n${said.stderr}${said.stdout}`);

const kHot = "tests/cli/weather/hot-evening.toml";

function sky(program) {
  const folder = mkdtempSync(join(tmpdir(), "lanework-weather-"));
  const run = (...words) => spawnSync(program, ["care", ...words], { encoding: "utf8" });
  return {
    run,
    json: (...words) => JSON.parse(run(...words, "--json").stdout),
    file(text) {
      const path = join(folder, "weather.toml");
      writeFileSync(path, text);
      return path;
    },
    close: () => rmSync(folder, { recursive: true }),
  };
}

const withSky = (name, check) => ({
  name: `weather: ${name}`,
  async run(program) {
    const s = sky(program);
    try {
      return check(s);
    } finally {
      s.close();
    }
  },
});

const topic = (answer, name) => answer.topics.find((one) => one.topic === name);
const kFresh = ["--minutes-old", "5"];
const kUsed = ["--acclimatised-days", "20", "--youngest-age", "15"];

const published = [
  withSky("published values come through the command line", (s) => {
    const heat = topic(s.json("heat", "--air-fahrenheit", "88", "--humidity-percent", "60", ...kFresh), "heat");
    const simplified = topic(s.json("heat", "--air-celsius", "30", "--humidity-percent", "50", ...kFresh), "heat").wet_bulb_globe;
    const measured = topic(s.json("heat", "--natural-wet-bulb-celsius", "25", "--globe-celsius", "40", "--air-celsius", "32", ...kFresh), "heat").wet_bulb_globe;
    const cold = topic(s.json("cold", "--air-fahrenheit", "25", "--wind-miles-per-hour", "20", ...kFresh), "cold");
    const air = topic(s.json("air", "--fine-particles-micrograms-per-cubic-metre", "40", ...kFresh), "air");
    return first(near(heat.heat_index.fahrenheit, 95.15, 0.05), near(simplified.celsius, 29.26, 0.02), near(measured.celsius, 28.7, 0.005),
      near(cold.felt_fahrenheit, 10.8, 0.05), near(air.index, 112.1, 0.05));
  }),
];

const stories = [
  withSky("thunder, then again: out no earlier than half an hour after the last", (s) => {
    const once = s.run("lightning", "--at", "14:05", "--thunder", "14:00");
    const again = s.run("lightning", "--at", "14:35", "--thunder", "14:20", "--thunder", "14:00");
    const over = s.run("lightning", "--at", "14:50", "--thunder", "14:00", "--thunder", "14:20");
    return first(status(once, 1), says(once.stdout, /no earlier than 14:30/), status(again, 1), says(again.stdout, /no earlier than 14:50/), status(over, 0),
      says(over.stdout, /blue sky is no all clear/));
  }),
  withSky("lightning in any order and twice is one answer", (s) => {
    const words = [["--thunder", "18:06"], ["--flash", "18:11"], ["--flash-to-thunder", "18:09=25"], ["--flash", "18:11"]];
    const answers = [words, [...words].reverse(), [words[1], words[0], words[2]]].map((order) => s.run("lightning", "--at", "18:12", ...order.flat()).stdout);
    return answers.every((answer) => answer === answers[0]) ? "" : answers.join("\n");
  }),
  withSky("past midnight", (s) => first(says(s.run("lightning", "--at", "00:10", "--thunder", "23:50").stdout, /no earlier than 00:20/),
    says(s.run("lightning", "--at", "2026-07-15T00:10", "--thunder", "23:50").stdout, /no earlier than 00:20/))),
  withSky("a hot evening with thunder: no session, and why, each topic with its source", (s) => {
    const said = s.run("weather", kHot, "--at", "18:07");
    const answer = s.json("weather", kHot, "--at", "18:07");
    return first(status(said, 1), says(said.stdout, /^At 18:07 on Tuesday 14 July 2026: no session\.$/m), says(said.stdout, /Lightning: .* 18:36/), says(said.stdout, /rough estimate and no reading/),
      answer.change.reasons.length === 4 && answer.change.no_session && answer.change.until === undefined ? "" : JSON.stringify(answer.change));
  }),
  withSky("an estimate never allows, the same number measured does", (s) => {
    const estimate = ["--air-celsius", "18", "--humidity-percent", "40", ...kUsed, ...kFresh];
    const estimated = topic(s.json("heat", ...estimate), "heat");
    const measured = topic(s.json("heat", ...kUsed, ...kFresh, "--wet-bulb-globe-celsius", String(estimated.wet_bulb_globe.celsius)), "heat");
    const words = s.run("heat", ...estimate).stdout;
    return first(estimated.allowed_as_usual ? "an estimate allowed" : "", measured.allowed_as_usual ? "" : "a measurement did not", says(words, /An estimate never allows/), silent(words, /as usual by/));
  }),
  withSky("old weather and weather of an unknown time are one band more careful", (s) => {
    const ask = (...age) => topic(s.json("heat", "--wet-bulb-globe-celsius", "23", ...kUsed, ...age), "heat");
    const [fresh, old, unknown] = [ask(...kFresh), ask("--minutes-old", "61"), ask()];
    return first(fresh.band === "below 24.0 °C" ? "" : fresh.band, old.band === "from 24.0 °C, below 26.0 °C" ? "" : old.band, unknown.band === old.band ? "" : unknown.band,
      says(old.cautions.join(), /older than 60 minutes/), says(unknown.cautions.join(), /nobody says when/));
  }),
  withSky("nothing known is said, and is not 'as usual'", (s) => {
    const said = s.run("weather", "tests/cli/weather/nothing-known.toml", "--at", "18:00");
    return first(status(said, 0), says(said.stdout, /nobody measured how warm it is/), says(said.stdout, /no all clear/), says(said.stdout, /a break of/), silent(said.stdout, /as usual by/));
  }),
  withSky("values that are unverified say so where they decide", (s) => first(
    says(s.run("heat", "--wet-bulb-globe-celsius", "33", "--region", "united-states-category-2", ...kFresh).stdout, /^Heat: no session\. .*unverified/),
    says(s.run("air", "--fine-particles-micrograms-per-cubic-metre", "60", ...kFresh).stdout, /^Air: no session\. .*unverified/),
    silent(s.run("air", "--index", "160", ...kFresh).stdout, /unverified/))),
  withSky("the guide for under-18s is the default, and stricter", (s) => first(status(s.run("air", "--index", "151", ...kFresh), 1), status(s.run("air", "--index", "151", "--guide", "schools", ...kFresh), 0),
    status(s.run("air", "--index", "150", ...kFresh), 0))),
  withSky("every answer says who comes first, and no colour of a traffic light", (s) => first(...[
    s.run("heat", "--air-celsius", "33", "--humidity-percent", "40"), s.run("cold", "--air-celsius", "-8"), s.run("air", "--index", "90"),
    s.run("lightning", "--at", "18:00"), s.run("weather", kHot, "--at", "18:07"),
  ].map((said) => first(says(said.stdout, /Local rules and licensed practice come first\.\n$/), silent(said.stdout, /\b(green|amber|yellow|orange|red|purple|black)\b/i), silent(said.stdout, /nan|inf\b/i))))),
];

// [what, words, what is said]
const kMistakes = [
  ["humidity above 100", ["heat", "--air-celsius", "30", "--humidity-percent", "140"], /^--humidity-percent: found 140, expected a number from 1 to 100$/],
  ["humidity as a share", ["heat", "--air-celsius", "30", "--humidity-percent", "0.4"], /^--humidity-percent: found 0\.4/],
  ["Fahrenheit as Celsius", ["heat", "--air-celsius", "95", "--humidity-percent", "40"], /^--air-celsius: found 95, expected a number from -50 to 60$/],
  ["a wet bulb above the air", ["heat", "--natural-wet-bulb-celsius", "31", "--globe-celsius", "40", "--air-celsius", "30"], /^--natural-wet-bulb-celsius: found 31\.0 °C, above the air's 30\.0 °C/],
  ["a globe without a wet bulb", ["heat", "--globe-celsius", "40"], /^--natural-wet-bulb-celsius: found nothing/],
  ["one thing in two units", ["cold", "--air-celsius", "1", "--air-fahrenheit", "34"], /^--air-fahrenheit: .*one of the two/],
  ["a region that no table has", ["heat", "--air-celsius", "30", "--region", "atlantis"], /^--region: found 'atlantis', expected one of children, /],
  ["a sun that is none", ["heat", "--air-celsius", "30", "--sun", "bright"], /^--sun: found 'bright'/],
  ["words for degrees", ["heat", "--air-celsius", "hot"], /--air-celsius/],
  ["minutes below 0", ["heat", "--air-celsius", "30", "--minutes-old", "-3"], /--minutes-old/],
  ["an index below 0", ["air", "--index", "-1"], /^--index: found -1/],
  ["an index and particles", ["air", "--index", "10", "--fine-particles-micrograms-per-cubic-metre", "10"], /^--index: .*one of the two/],
  ["no moment", ["lightning", "--thunder", "14:00"], /--at/],
  ["a moment that is none", ["lightning", "--at", "25:00"], /^--at: found '25:00', expected a time such as/],
  ["an event of no time", ["lightning", "--at", "14:00", "--thunder", "noon"], /^--thunder: found 'noon'/],
  ["a count without seconds", ["lightning", "--at", "14:00", "--flash-to-thunder", "13:59"], /^--flash-to-thunder: found '13:59'/],
  ["a count of an hour", ["lightning", "--at", "14:00", "--flash-to-thunder", "13:59=3600"], /^--flash-to-thunder: found '13:59=3600'/],
  ["a file that is not there", ["weather", "nowhere.toml", "--at", "18:00"], /nowhere\.toml/],
  ["weather measured after it", ["weather", kHot, "--at", "17:30"], /^--at: found '17:30', expected a time not before what was measured at 2026-07-14T17:40$/],
  ["a catalogue without care", ["heat", "--air-celsius", "30", "--catalogue", "tests/cli/weather"], /heat_bands\.toml/],
];

const mistakes = kMistakes.map(([name, words, said]) =>
  withSky(`bad input: ${name}`, (s) => {
    const result = s.run(...words);
    const lines = result.stderr.split("\n").filter((line) => line !== "");
    const one = name === "a catalogue without care" ? lines.slice(0, 1) : lines;
    return first(status(result, 2), one.length === 1 ? "" : lines.join("\n"), says(one[0], said), result.stdout === "" ? "" : result.stdout);
  }));

const files = [
  withSky("all mistakes of a file are told together, each with its line", (s) => {
    const said = s.run("weather", s.file("humidity_percent = 101\nair_celsius = 30\nhumidty = 4\n[[lightning]]\nsign = \"bang\"\nat = 2026-07-14T18:06:00\n"), "--at", "18:00");
    return first(status(said, 2), says(said.stderr, /weather\.toml:1:1: humidity_percent: found 101/), says(said.stderr, /weather\.toml:3:1: humidty/), says(said.stderr, /weather\.toml:5:1: lightning\.1\.sign: found 'bang'/),
      said.stdout === "" ? "" : said.stdout);
  }),
];

const kOffset = /^\S*weather\.toml:1:1: measured_at: found '2026-07-14T17:40:00(\+02:00|Z)', expected a date and local time, without an offset, such as /;
for (const offset of ["+02:00", "Z"]) {
  files.push(withSky(`a time with the offset ${offset} is a mistake, and not read as local`, (s) => {
    const said = s.run("weather", s.file(`measured_at = 2026-07-14T17:40:00${offset}\nair_celsius = 30\n`), "--at", "18:00");
    return first(status(said, 2), says(said.stderr, kOffset), said.stderr.trimEnd().includes("\n") ? said.stderr : "", said.stdout === "" ? "" : said.stdout);
  }));
}

export const weather = [...published, ...stories, ...mistakes, ...files];

// Answers of every kind, to be held against the schema.
export const kWeatherAnswers = [
  ["weather", kHot, "--at", "18:07"],
  ["weather", "tests/cli/weather/warm-evening.toml", "--at", "18:00"],
  ["weather", "tests/cli/weather/cold-evening.toml", "--at", "18:00"],
  ["weather", "tests/cli/weather/nothing-known.toml", "--at", "18:00"],
  ["heat", "--air-celsius", "24", "--humidity-percent", "50", "--indoor"],
  ["heat", "--natural-wet-bulb-celsius", "22", "--globe-celsius", "25", "--indoor"],
  ["cold", "--air-celsius", "-30", "--wind-metres-per-second", "6"],
  ["air", "--fine-particles-micrograms-per-cubic-metre", "400"],
  ["lightning", "--at", "14:00", "--flash-to-thunder", "13:59=20"],
  ["lightning", "--at", "14:00"],
].map((words) => ["care", ...words, "--json"]);
