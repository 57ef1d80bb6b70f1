// How long a change takes from the question to the answer, in the app's own worker in Chromium: what the app itself asked is
// asked again with another turnout, other minutes, other kit, as it would be after a tap. First the plan with its spread by
// formula, as screens draw it at once; then the same with the spread simulated, which follows.
import { middle } from "./loading.mjs";

// In the page before anything of the app: holds on to the door's worker and to the last question about a plan.
export function holdWorker() {
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...more) {
    window.doorWorker = this;
    if (typeof message?.request === "string" && message.request.includes('"request":"plan"')) window.planAsked = message.request;
    return post.call(this, message, ...more);
  };
}

// In the page: each change asked once, one after the other.
async function askAll({ changes, spread }) {
  const first = { ...JSON.parse(window.planAsked), spread };
  const out = [];
  let number = 1e6;
  for (const { turnout, minutes, missing } of changes) {
    const { squad } = first;
    const request = { ...first, squad: { ...squad, slot: { ...squad.slot, ...(minutes ? { minutes } : {}) }, tonight: { ...squad.tonight, ...(turnout ? { turnout, late: 0 } : {}) }, kit: { ...squad.kit, ...(missing ? { [missing]: 0 } : {}) } } };
    const mine = ++number;
    const began = performance.now();
    const answer = await new Promise((heard) => {
      const hear = ({ data }) => {
        if (data.number !== mine) return;
        window.doorWorker.removeEventListener("message", hear);
        heard(JSON.parse(data.answer));
      };
      window.doorWorker.addEventListener("message", hear);
      window.doorWorker.postMessage({ number: mine, request: JSON.stringify(request) });
    });
    out.push({ milliseconds: performance.now() - began, answer: answer.answer, outcome: answer.outcome });
  }
  return out;
}

const kChanges = [
  ...Array.from({ length: 24 }, (_, index) => ({ kind: "turnout", turnout: 4 + index })),
  ...Array.from({ length: 24 }, (_, index) => ({ kind: "minutes", minutes: 8 + index })),
  ...["cones", "balls", "mats"].flatMap((missing) => [10, 13, 16, 19].map((turnout) => ({ kind: "kit", missing, turnout }))),
];

export async function adapting(page) {
  await page.waitForFunction(() => window.planAsked && window.doorWorker);
  await page.evaluate(askAll, { changes: kChanges.slice(0, 3), spread: "formula" }); // so that the module is compiled as it is after some taps
  const seen = await page.evaluate(askAll, { changes: kChanges, spread: "formula" });
  const followed = await page.evaluate(askAll, { changes: kChanges.slice(0, 12), spread: "simulated" });
  const wrong = seen.filter(({ answer }) => answer !== "plan").length;
  const of = (kind) => seen.filter((_, index) => !kind || kChanges[index].kind === kind).map(({ milliseconds }) => milliseconds);
  const sorted = of().sort((a, b) => a - b);
  return {
    count: seen.length, wrong, spread_follows: middle(followed.map((one) => one.milliseconds)), median: middle(of()), ninth: sorted[Math.floor(sorted.length * 0.9)], worst: sorted.at(-1),
    kinds: Object.fromEntries(["turnout", "minutes", "kit"].map((kind) => [kind, middle(of(kind))])),
  };
}
