// A drill of an evening is dragged past another, and dragged back: how long from letting go until the new picture is painted.

function watchRows() {
  window.dragMarks = { let_go: 0, painted: 0 };
  const rows = () => [...document.querySelectorAll(".ribbon-row")].map((row) => row.dataset.drill).join();
  addEventListener("pointerup", () => {
    const before = rows();
    window.dragMarks = { let_go: performance.now(), painted: 0 };
    const watch = new MutationObserver(() => {
      if (rows() === before) return;
      watch.disconnect();
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => (window.dragMarks.painted = performance.now());
        port2.postMessage(undefined);
      });
    });
    watch.observe(document.querySelector(".ribbon"), { subtree: true, childList: true, attributes: true });
  }, { capture: true });
}

const kSettleMilliseconds = 900; // until the simulated finish has come too

async function drag(page, one, other) {
  const middleOf = async (drill) => {
    const { x, y, height } = await page.locator(`.ribbon-row[data-drill="${drill}"] .ribbon-sign`).boundingBox();
    return { x: x + 9, y: y + height / 2 };
  };
  await page.locator(`.ribbon-row[data-drill="${one}"]`).scrollIntoViewIfNeeded();
  const [from, to] = [await middleOf(one), await middleOf(other)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
  await page.waitForFunction(() => window.dragMarks.painted > 0);
  const { let_go, painted } = await page.evaluate(() => window.dragMarks);
  await page.waitForTimeout(kSettleMilliseconds);
  return painted - let_go;
}

// The first drill that may go past the next one, there and back.
export async function dragged(page, times) {
  await page.evaluate(watchRows);
  const rows = () => page.locator(".ribbon-row").evaluateAll((all) => all.map((row) => ({ drill: row.dataset.drill, later: !row.querySelectorAll("button")[1].disabled })));
  const out = [];
  for (let time = 0; time < times; time++) {
    const there = await rows();
    const at = there.findIndex(({ later }, nth) => later && nth + 1 < there.length);
    out.push(await drag(page, there[at].drill, there[at + 1].drill));
  }
  return out;
}
