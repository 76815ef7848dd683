// The pace at the count: due time and closing, what may be said of them, and the chart.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, PHONE } from "../support/browser.mjs";
import { WEDNESDAY, advance, day } from "../support/clock.mjs";
import { pull } from "../support/counting.mjs";
import { press, waitForDialog } from "../support/page.mjs";
import { testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";

const app = testServer();

/** Counts this many pieces, each so many seconds after the one before. */
async function pullEvery(page, seconds, pieces) {
  for (let piece = 0; piece < pieces; piece += 1) {
    await advance(page, seconds);
    await pull(page, 1);
  }
}

test("a guess alone gives no percentage, and the run's own pace does", async (t) => {
  const page = await openCounting(t, app, { device: PHONE, job: { due_day: day(), due_time: "16:00" }, run: { guess: 25 } });
  await page.locator("#chance .tight").getByText("Likely printed by the due time").waitFor();
  assert.doesNotMatch(await page.locator("#chance").innerText(), /%/);
  await pullEvery(page, 30, 7);
  await page.locator("#chance .good").getByText("Printed by the due time (99% chance)").waitFor();
  await press(page, "#pace");
  await waitForDialog(page);
  const words = page.locator("#pace-words");
  await words.getByText("Due 4:00\u00a0pm").waitFor();
  await words.getByText("Based on 6 pieces timed in this run and your estimate.").waitFor();
  await words.getByText("Without similar runs, a slow start or a tired finish can't be estimated.").waitFor();
  await words.getByText("with stops and misprints").waitFor();
});

test("a run is late once its due time has passed, whenever the shop closes", async (t) => {
  const page = await openCounting(t, app, { device: PHONE, job: { due_day: day(), due_time: "09:00" }, run: { guess: 25 } });
  await page.locator("#chance .bad").getByText("Was due 9:00\u00a0am").waitFor();
});

test("a run without a due time is compared with closing, by its day", async (t) => {
  const garments = { "size-s": 2000, "size-m": "", "size-l": "" };
  const page = await openCounting(t, app, { device: PHONE, now: WEDNESDAY, job: { due_day: "" }, garments, run: { guess: 24 } });
  await page.locator("#finish strong").getByText(/^printed tomorrow, \d+:\d\d/i).waitFor();
  await page.locator("#chance .tight").getByText("Probably not done by closing").waitFor();
});

for (const [name, device] of Object.entries({ "a phone": PHONE, "a desk": DESK })) {
  test(`on ${name} the pace chart has both axes, the target and the range`, async (t) => {
    const page = await openCounting(t, app, { device, job: { due_day: day(), due_time: "10:00" } });
    await pullEvery(page, 40, 8);
    await page.locator(".pace-button .chart-target").getByText("36 pieces").waitFor();
    await press(page, "#pace");
    const chart = page.locator("dialog .pace-chart.large");
    await chart.locator(".chart-target").getByText("36 pieces").waitFor();
    assert.deepEqual(await chart.locator(".chart-pieces span:not(.chart-target)").allInnerTexts(), ["0", "10", "20", "30"]);
    const times = await chart.locator(".chart-times span").allInnerTexts();
    assert.ok(times.length >= 2 && times.every((time) => /^(9|10):\d[05]\u00a0am$/.test(time)), times.join());
    for (const word of ["printed", "expected", "80% likely"]) await chart.locator(".chart-legend").getByText(word).waitFor();
    await chart.locator(".chart-mark").getByText("due").waitFor();
    const outside = await chart.evaluate((chart) => {
      const sheet = chart.closest("dialog").getBoundingClientRect();
      const labels = [...chart.querySelectorAll("span")].map((label) => [label.innerText, label.getBoundingClientRect()]);
      return labels.filter(([, box]) => box.left < sheet.left || box.right > sheet.right).map(([text]) => text);
    });
    assert.deepEqual(outside, []);
    const overlapping = await chart.locator(".chart-times span").evaluateAll((labels) =>
      labels.slice(1).filter((label, at) => label.getBoundingClientRect().left < labels[at].getBoundingClientRect().right + 4).length);
    assert.equal(overlapping, 0);
  });
}
