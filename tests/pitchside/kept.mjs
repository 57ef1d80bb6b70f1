// What is kept stays kept: a phone that dies, two tabs, a full phone, a clock that goes back, a lease that is over.
import { randomBytes } from "node:crypto";
import { all, kDay, that } from "../serve/expect.mjs";
import { pause } from "../serve/server.mjs";
import { onPhone } from "./paired.mjs";

const tap = (page, times = 1) => page.evaluate(async ([count, day]) => {
  const out = [];
  for (let i = 0; i < count; i++) out.push(await window.lane.tap(day, `drill-${i}`));
  return out;
}, [times, kDay]);

const numbersOf = (seen) => [...seen.values()].map(([one]) => one.sequence).sort((a, b) => a - b);
const gapless = (numbers) => numbers.every((number, index) => number === index + 1);

async function killed(set, { long }) {
  const { phone, way } = set;
  const rounds = long ? 20 : 3;
  const out = [];
  for (let round = 0; round < rounds; round++) {
    const page = round === 0 ? set.page : await phone.lane(way.url);
    // In every other round it sends as well, so that it dies in the middle of that too.
    await page.evaluate(([day, sends]) => {
      void window.lane.tapOn(day);
      if (sends) setInterval(() => void window.lane.sync.run(), 20);
    }, [kDay, round % 2 === 1]);
    // On a busy machine it takes a while until anything is kept; a kill before that would prove nothing.
    const kept = () => phone.said.filter((line) => line.startsWith("kept ")).length;
    for (const [before, from] = [kept(), Date.now()]; kept() === before && Date.now() - from < 10_000;) await pause(20);
    await pause(Math.random() * 700);
    await phone.kill();
    await phone.open();
  }
  const page = await phone.lane(way.url);
  const before = await set.books(page);
  const dump = JSON.parse(await page.evaluate(() => window.lane.dump()));
  const evening = await page.evaluate(() => window.lane.keep.evening("evening"));
  if (!evening) return `the evening is not there: ${JSON.stringify(before)}, ${phone.said.length} lines were said`;
  const after = await set.run(page);
  const shown = phone.said.filter((line) => line.startsWith("kept ")).map((line) => line.slice(5));
  const seen = await set.seen();
  const once = shown.filter((id) => seen.get(id)?.length === 1).length;
  out.push(that(before.waiting === dump.outbox.length, `${before.waiting} shown as waiting, ${dump.outbox.length} in the outbox`));
  out.push(that(evening.count === before.device.next_sequence - 1, `the evening counts ${evening.count}, the device has numbered ${before.device.next_sequence - 1}`));
  out.push(that(after.waiting === 0 && after.trouble === undefined, JSON.stringify(after)), that(once === shown.length && shown.length > rounds, `${once} of ${shown.length} shown as kept are there once`));
  out.push(that(gapless(numbersOf(seen)) && seen.size === after.device.next_sequence - 1, `${seen.size} entries of ${after.device.next_sequence - 1}: ${numbersOf(seen).slice(0, 20)}`));
  return { detail: all(out), note: `killed ${rounds} times; ${shown.length} entries shown as kept, each there once; ${seen.size} in all, without a gap` };
}

async function twoTabs(set) {
  const { phone, way, page } = set;
  await tap(page, 2);
  const other = await phone.lane(way.url);
  const [first, second] = [await set.books(page), await set.books(other)];
  const out = [that(first.writes && !second.writes, `writers: ${first.writes}, ${second.writes}`)];
  const refused = (await tap(other))[0];
  out.push(that(refused.kept === false && refused.why === "other-tab", JSON.stringify(refused)));
  await tap(page);
  await other.waitForFunction(() => window.lane.keep.books.value.waiting === 3, undefined, { timeout: 2000 });
  const from = Date.now();
  const crashed = page.waitForEvent("crash", { timeout: 5000 }).catch(() => {});
  const wire = await phone.context.newCDPSession(page);
  wire.send("Page.crash").catch(() => {});
  await crashed;
  await other.waitForFunction(() => window.lane.keep.writes.value, undefined, { timeout: 5000 });
  const took = Date.now() - from;
  out.push(that(took < 2000, `${took} ms until the other tab wrote`));
  const mine = (await tap(other))[0];
  out.push(that(mine.kept && mine.entries[0].sequence === 4, JSON.stringify(mine)));
  // Taken over by hand, from a tab that is alive; the one before only looks.
  const third = await phone.lane(way.url);
  await third.evaluate(() => window.lane.keep.takeOver());
  await third.waitForFunction(() => window.lane.keep.writes.value, undefined, { timeout: 2000 });
  const late = (await tap(other))[0];
  const fifth = (await tap(third))[0];
  out.push(that(late.kept === false && late.why === "other-tab", JSON.stringify(late)), that(fifth.entries?.[0].sequence === 5, JSON.stringify(fifth)));
  const after = await set.run(third);
  out.push(that(after.waiting === 0 && gapless(numbersOf(await set.seen())), JSON.stringify(after)));
  return { detail: all(out), note: `the other tab wrote ${took} ms after its holder had crashed` };
}

const packageOf = (squad, lease, more = {}) => ({
  version: 1, club: "Quillmere Juniors", squad: { id: squad, name: squad }, made: "2026-11-27T05:20:00+01:00", lease_until: lease, ask: "", catalogue: {}, action_plans: [],
  roster: [{ player: "Q03", name: "Wilhelmina Testperson" }], standing: [],
  evenings: [{ day: kDay, start: "18:00", minutes: 20, strip: "grass", documents: { routine: {}, strip: {}, squad: {}, permissions: {}, roster: [{ id: "Q03", name: "Wilhelmina Testperson" }] } }], ...more,
});
const keepPackage = (page, value) => page.evaluate((one) => window.lane.keep.keepPackage(one.squad.id, one), value);
const later = (hours) => new Date(Date.now() + hours * 3600e3).toISOString();

const noise = (bytes) => randomBytes(bytes / 2).toString("hex"); // the browser packs what can be packed

async function full(set) {
  const { phone, way } = set;
  // The browser remembers for a while how much room there was, so it begins anew.
  await phone.kill();
  await phone.open();
  const wire = await phone.context.newCDPSession(await phone.page("about:blank"));
  await wire.send("Storage.overrideQuotaForOrigin", { origin: way.url, quotaSize: 3e6 });
  const page = await phone.lane(way.url);
  for (const squad of ["u12-dunnocks", "u13-kestrels"]) await keepPackage(page, packageOf(squad, later(1), { filling: noise(1e6) }));
  await tap(page, 3);
  const fill = () => page.evaluate(async () => {
    const state = { ...(await window.lane.keep.evening("evening")), filling: Array.from({ length: 16 }, () => Array.from(crypto.getRandomValues(new Uint16Array(32768)), (one) => String.fromCharCode(0x100 + (one % 0x700))).join("")) };
    const kept = await window.lane.keep.step("evening", state, []);
    return { kept, squads: (await window.lane.keep.packages()).map((one) => one.package.squad.id) };
  });
  const first = await fill();
  const out = [that(first.kept.kept && first.squads.join() === "u13-kestrels", `the oldest package does not go first: ${JSON.stringify(first)}`)];
  await wire.send("Storage.overrideQuotaForOrigin", { origin: way.url, quotaSize: 1000 });
  const refused = await fill();
  out.push(that(refused.kept.kept === false && refused.kept.why === "no-room", JSON.stringify(refused)), that(refused.squads.length === 1, "the last package went"));
  const state = await page.evaluate(() => window.lane.keep.evening("evening"));
  out.push(that(state.count === 3, JSON.stringify(state).slice(0, 100)), that((await set.books(page)).waiting === 3, "the outbox lost something"));
  await wire.send("Storage.overrideQuotaForOrigin", { origin: way.url, quotaSize: 1e8 });
  const again = (await tap(page))[0];
  out.push(that(again.kept && again.entries[0].sequence === 4, JSON.stringify(again)));
  return all(out);
}

async function clock(set) {
  const { page } = set;
  const ids = [];
  for (const shift of [0, 0, -365.25 * 86400e3, -3600e3, 60e3, 0, -1]) {
    await page.evaluate((milliseconds) => window.lane.shiftClock(milliseconds), shift);
    ids.push(...(await tap(page, 3)).map((one) => one.entries[0].id));
  }
  const many = await page.evaluate(async () => {
    const made = await window.lane.keep.step("evening", {}, Array.from({ length: 5000 }, () => ({ kind: "hurt", player: "Q03" })));
    return made.entries.map(({ id }) => id);
  });
  const list = [...ids, ...many];
  const version = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
  return all(that(list.every((id) => version.test(id)), `no UUID of version 7: ${list.find((id) => !version.test(id))}`), that(list.every((id, index) => index === 0 || id > list[index - 1]), "an id is not above the one before it"));
}

async function lease(set) {
  const { page, way } = set;
  const held = () => page.evaluate(() => window.lane.keep.packages());
  await keepPackage(page, packageOf("u13-kestrels", later(1)));
  const open = await held();
  const out = [that(!open[0].locked && open[0].package.roster[0].name === "Wilhelmina Testperson", JSON.stringify(open))];
  await page.evaluate(() => window.lane.shiftClock(2 * 3600e3));
  const over = await held();
  out.push(that(over[0].locked && !JSON.stringify(over).includes("Wilhelmina") && over[0].package.evenings[0].documents.roster[0].name === "Q03", JSON.stringify(over)));
  // The clock put back helps no more once the server has said what time it is; entries are kept and sent all the same.
  await keepPackage(page, packageOf("u13-kestrels", later(-1)));
  await page.evaluate(() => window.lane.shiftClock(0));
  way.set("says", { path: /^\/api\/device/, status: 404, body: { error: "not-found", what: "There is nothing here for you." } });
  await tap(page);
  const sent = await set.run();
  await page.evaluate(() => window.lane.shiftClock(-5 * 3600e3));
  const back = await held();
  out.push(that(sent.waiting === 0, JSON.stringify(sent)), that(back[0]?.locked, JSON.stringify(back)));
  return all(out);
}

export const kept = [
  onPhone("killed at random moments, nothing is lost or doubled", killed),
  onPhone("two tabs: one writes, the other takes over", twoTabs),
  onPhone("a phone that is full keeps its outbox", full),
  onPhone("ids go up, whatever the clock does", clock),
  onPhone("names are locked when their lease is over", lease),
];
export { keepPackage, later, packageOf, tap };
