// How long a screen takes to open, seen in Chromium: from the navigation's beginning until its heading is painted, until
// everything on it is there and nothing is waited for, and until the page can be used; and how far it moved meanwhile.

const kQuietMilliseconds = 600; // nothing more is counted to the opening after so long without a change

// In the page before anything of the desk: marks by performance.now(), which counts from the navigation.
// until: what must stand there too.
function watch(until) {
  const marks = (window.opening = { shown: 0, there: 0, tasks: [], shift: 0, moved: [], changed: 0 });
  const seen = (type, take) => new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true });
  seen("longtask", ({ startTime, duration }) => marks.tasks.push([startTime, startTime + duration]));
  seen("layout-shift", ({ value, hadRecentInput, sources }) => {
    if (hadRecentInput) return;
    marks.shift += value;
    marks.moved.push(...sources.map(({ node }) => node?.className || node?.nodeName));
  });
  let wanted = 0;
  const painted = (name) => {
    const mine = ++wanted;
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        if (name === "shown" || mine === wanted) marks[name] = performance.now();
      };
      port2.postMessage(undefined);
    });
  };
  let complete = false;
  const look = () => {
    marks.changed = performance.now();
    const heading = document.querySelector("main h1") !== null;
    if (heading && !marks.shown) {
      marks.shown = performance.now();
      painted("shown");
    }
    const whole = heading && document.querySelector(".waiting") === null && (until === "" || document.querySelector(until) !== null);
    if (whole && !complete) painted("there");
    if (!whole) {
      wanted += 1;
      marks.there = 0;
    }
    complete = whole;
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true });
}

// A page of the context opens the address: {shown, there, usable, shift, moved}. The page stays, for whoever looks further.
export async function openingOf(context, address, until = "") {
  const page = await context.newPage();
  await page.addInitScript(`(${watch})(${JSON.stringify(until)})`);
  await page.goto(address, { waitUntil: "commit" });
  await page.waitForFunction((quiet) => window.opening?.there > 0 && performance.now() - window.opening.changed > quiet, kQuietMilliseconds, { timeout: 60_000, polling: 50 });
  const { shown, there, tasks, shift, moved } = await page.evaluate(() => window.opening);
  const usable = Math.max(there, ...tasks.filter(([from, to]) => to > there && from < there + kQuietMilliseconds).map(([, to]) => to));
  return { page, shown, there, usable, shift, moved };
}
