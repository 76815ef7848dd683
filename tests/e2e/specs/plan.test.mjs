// The day page: order of runs, closing time, and the verdict on them.
import assert from "node:assert/strict";
import { test } from "node:test";
import { exportBackup } from "../support/backup.mjs";
import { DESK, PHONE } from "../support/browser.mjs";
import { SATURDAY, WEDNESDAY, day } from "../support/clock.mjs";
import { centreOf, pull } from "../support/counting.mjs";
import { fillForm, go, press, save, waitForText } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, startCounting } from "../support/shop.mjs";
import { touchInput } from "../support/touch.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

const order = (page) => page.locator(".rail-runs .run-words strong").allInnerTexts();

async function waitForOrder(page, titles) {
  await page.waitForFunction(
    (titles) => JSON.stringify([...document.querySelectorAll(".rail-runs .run-words strong")].map((title) => title.innerText)) === titles,
    JSON.stringify(titles),
  ).catch(async () => assert.deepEqual(await order(page), titles));
}

/** Opens the shop if it is closed today, as on a weekend. The reload removes the notice of that. */
async function openForToday(page) {
  if ((await page.locator(".closing .button").count()) === 0) return;
  await press(page, ".closing .button");
  await page.locator(".closing .button").waitFor({ state: "detached" });
  await page.reload();
  await page.locator("#verdict").waitFor();
}

/** An open shop with three jobs, in the order they are due. */
async function threeJobs(t, device) {
  const page = await openShop(t, app, { device });
  for (const [days, title] of [[0, "Tour tees"], [1, "Crew jerseys"], [2, "Swap day totes"]]) {
    await newJob(page, { title, due_day: day(days) });
    await addGarments(page, { "size-s": 4, "size-m": "", "size-l": "" });
    await addRun(page, { guess: 60 });
  }
  await go(page, "#/", "#verdict");
  await openForToday(page);
  await waitForOrder(page, ["Tour tees", "Crew jerseys", "Swap day totes"]);
  return page;
}

for (const [name, device] of Object.entries({ "a phone": PHONE, "a desk": DESK })) {
  test(`on ${name} buttons reorder runs; the order survives a reload`, async (t) => {
    const page = await threeJobs(t, device);
    await press(page, page.getByRole("button", { name: "Move Tour tees down" }));
    await waitForOrder(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
    await page.getByText("Tour tees is now number 2.").waitFor();
    await press(page, page.getByRole("button", { name: "Move Swap day totes up" }));
    await waitForOrder(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await page.reload();
    await waitForOrder(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await press(page, page.getByRole("button", { name: "Move Swap day totes up" }));
    await waitForOrder(page, ["Swap day totes", "Crew jerseys", "Tour tees"]);
    await press(page, ".notice-undo");
    await waitForOrder(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await page.reload();
    await waitForOrder(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    assert.ok(await page.getByRole("button", { name: "Move Crew jerseys up" }).isDisabled(), "the first goes no higher");
    assert.ok(await page.getByRole("button", { name: "Move Tour tees down" }).isDisabled(), "the last goes no lower");
  });

  test(`on ${name} dragging reorders runs; the order survives a reload`, async (t) => {
    const page = await threeJobs(t, device);
    await page.locator(".rail-runs li").nth(1).evaluate((row) => row.scrollIntoView({ block: "center" }));
    const grip = await centreOf(page.locator(".grip").nth(1));
    const first = await page.locator(".rail-runs li").first().boundingBox();
    const target = [grip[0], first.y + 20];
    if (device.hasTouch) {
      const touch = await touchInput(page);
      await touch.down({ id: 1, x: grip[0], y: grip[1] });
      for (let step = 1; step <= 8; step += 1) await touch.move({ id: 1, x: grip[0], y: grip[1] + ((target[1] - grip[1]) * step) / 8 });
      await page.locator("li.dragged").waitFor();
      await touch.up();
    } else {
      await page.mouse.move(...grip);
      await page.mouse.down();
      await page.mouse.move(...target, { steps: 8 });
      await page.locator("li.dragged").waitFor();
      await page.mouse.up();
    }
    await waitForOrder(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
    await page.reload();
    await waitForOrder(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
    await press(page, page.getByRole("button", { name: "Move Tour tees down" }));
    await waitForOrder(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await press(page, ".notice-undo");
    await waitForOrder(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
  });
}

test("a drag that ends where it began changes nothing", async (t) => {
  const page = await threeJobs(t, DESK);
  const grip = await centreOf(page.locator(".grip").nth(1));
  await page.mouse.move(...grip);
  await page.mouse.down();
  await page.mouse.move(grip[0], grip[1] + 12, { steps: 3 });
  await page.mouse.up();
  await page.locator("li.dragged").waitFor({ state: "detached" });
  assert.deepEqual(await order(page), ["Tour tees", "Crew jerseys", "Swap day totes"]);
  assert.equal(await page.locator(".notice").count(), 0);
});

test("a second finger moves no run, and a cancelled drag changes nothing", async (t) => {
  const page = await threeJobs(t, PHONE);
  await page.locator(".rail-runs li").nth(1).evaluate((row) => row.scrollIntoView({ block: "center" }));
  const top = (await page.locator(".rail-runs li").first().boundingBox()).y + 20;
  const touch = await touchInput(page);
  const grip = async (row, id) => {
    const [x, y] = await centreOf(page.locator(".grip").nth(row));
    return (share) => ({ id, x, y: y + (top - y) * share });
  };
  const first = await grip(1, 1);
  const second = await grip(2, 2);
  await touch.down(first(0));
  await touch.move(first(0.5));
  await page.locator("li.dragged").waitFor();
  // The other run's grip, dragged to the top and let go.
  await touch.down(first(0.5), second(0));
  for (const share of [0.3, 0.6, 1]) await touch.move(first(0.5), second(share));
  assert.equal(await page.locator("li.dragged").count(), 1);
  await touch.up(second(1));
  for (const share of [0.7, 1]) await touch.move(first(share));
  await touch.cancel();
  await page.locator("li.dragged").waitFor({ state: "detached" });
  // Had either moved a run, this would be another run, or end in another order.
  await touch.down(first(0));
  for (const share of [0.3, 0.6, 1]) await touch.move(first(share));
  await touch.up();
  await waitForOrder(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
  // After a drag that ends in a swing Chromium takes the next tap for the end of the swing.
  await page.reload();
  await page.locator("#verdict").waitFor();
  const { bytes } = await exportBackup(page);
  assert.equal(journalLines(bytes).filter((line) => line.includes('"runs_ordered"')).length, 1);
});

test("closing time moves by half an hour and survives a reload", async (t) => {
  const page = await threeJobs(t, PHONE);
  const waitForText = (time) => page.locator("#closing").getByText(`Closing ${time}`).waitFor();
  await waitForText("5:00\u00a0pm");
  await press(page, page.getByRole("button", { name: "half an hour earlier" }));
  await waitForText("4:30\u00a0pm");
  await page.getByText("Closing today is now 4:30\u00a0pm.").waitFor();
  await page.reload();
  await waitForText("4:30\u00a0pm");
  for (let twice = 0; twice < 2; twice += 1) await press(page, page.getByRole("button", { name: "half an hour later" }));
  await waitForText("5:30\u00a0pm");
});

test("on a Saturday the shop is closed until somebody opens it", async (t) => {
  const page = await openShop(t, app, { now: SATURDAY });
  await newJob(page, { due_day: "2026-06-22" });
  await addGarments(page, { "size-s": 4, "size-m": "", "size-l": "" });
  await addRun(page, { guess: 60 });
  await go(page, "#/", "#verdict");
  await page.locator("#verdict.tight").getByText("The shop is closed; 1 run left.").waitFor();
  // Its work is for Monday morning.
  await page.locator(".run-finish .out").getByText("printed Monday, 8:").waitFor();
  await page.locator("#closing").getByText("Closed today").waitFor();
  await waitForText(page, ".closing .button", "Open until 5:00\u00a0pm");
  await press(page, ".closing .button");
  await page.locator("#closing").getByText("Closing 5:00\u00a0pm").waitFor();
  await page.locator("#verdict.quiet").getByText("Nothing is due today. 1 run open, the last expected printed 9:").waitFor();
});

test("a run of unknown time in the dryer says its times end at the press", async (t) => {
  const page = await openShop(t, app, { device: PHONE });
  await newJob(page, { title: "Club tees" });
  await addGarments(page);
  await addRun(page, { guess: 30 });
  await go(page, "#/", "#verdict");
  await openForToday(page);
  await page.locator("#verdict").getByText("Dwell time is missing.").waitFor();
  await waitForText(page, "#dryer-unknown", "1 run has no dwell time");
  await waitForText(page, ".run-finish .out", "printed");
  await press(page, ".run-link");
  await startCounting(page);
  await pull(page, 1);
  await waitForText(page, "#finish strong", "printed");
  await press(page, "#pace");
  await waitForText(page, "#pace-words", "dwell time not entered");
  await page.goBack();
  await go(page, "#/jobs", ".job-row");
  await press(page, ".job-row");
  await press(page, page.locator(".run-row a.icon-button").first());
  await fillForm(page, { dwell: 90 });
  await save(page);
  await page.locator(".page.job").waitFor();
  await go(page, "#/", "#verdict");
  await waitForText(page, ".run-finish .out", "out");
  assert.equal(await page.locator("#dryer-unknown").count(), 0);
  assert.doesNotMatch(await page.locator("#verdict").innerText(), /missing/);
});

test("a run that will hardly make closing is reported in verdict and row", async (t) => {
  const page = await threeJobs(t, PHONE);
  // On guesses alone nothing is certain.
  await page.locator("#verdict.likely").getByText("Likely on time. Last run due today expected ").waitFor();
  await newJob(page, { title: "Marathon tees" });
  await addGarments(page, { "size-s": 60, "size-m": "", "size-l": "" });
  await addRun(page, { guess: 900 });
  await go(page, "#/", "#verdict");
  await page.locator("#verdict.tight").getByText("Probably not everything fits today. 1 run probably won't be done by closing.").waitFor();
  const block = page.locator(".rail-runs li").filter({ hasText: "Marathon tees" });
  await block.locator("[data-fit=hardly]").getByText("Probably past closing").waitFor();
});

test("work for another day names it, leaves out the night, is not due today", async (t) => {
  const page = await openShop(t, app, { device: PHONE, now: WEDNESDAY });
  await newJob(page, { title: "Club tees", due_day: "" });
  await addGarments(page, { "size-s": 900, "size-m": "", "size-l": "" });
  await addRun(page, { guess: 60 });
  await go(page, "#/", "#verdict");
  await openForToday(page);
  await page.locator("#verdict.quiet").getByText("Nothing is due today. 1 run open, the last expected printed tomorrow, ").waitFor();
  const block = page.locator(".rail-runs li").filter({ hasText: "Club tees" });
  await block.locator("[data-fit=later]").getByText("Not due today").waitFor();
  assert.match(await block.locator(".out").innerText(), /^printed tomorrow, /);
});

test("behind a run of unknown pace nothing is said to make it", async (t) => {
  const page = await openShop(t, app, { device: PHONE });
  await newJob(page, { title: "Unknown tees", due_day: day(), due_time: "10:00" });
  await addGarments(page);
  await addRun(page);
  await newJob(page, { title: "Tour tees", due_day: day(), due_time: "16:00" });
  await addGarments(page, { "size-s": 4, "size-m": "", "size-l": "" });
  await addRun(page, { guess: 60 });
  await go(page, "#/", "#verdict");
  await openForToday(page);
  const block = page.locator(".rail-runs li").filter({ hasText: "Tour tees" });
  await block.locator("[data-fit=depends]").getByText("Depends on the run before").waitFor();
  await block.getByText("at the earliest").waitFor();
});

test("a run without a known pace is reported in the verdict", async (t) => {
  const page = await threeJobs(t, PHONE);
  await newJob(page, { title: "Unknown tees" });
  await addGarments(page);
  await addRun(page);
  await go(page, "#/", "#verdict");
  await page.locator("#verdict.tight").getByText("1 run with no known pace").waitFor();
});

test("no run can be moved before the one on the press", async (t) => {
  const page = await openDemo(t, app);
  const [first, second, third, fourth] = await order(page);
  assert.equal(await page.locator(".rail-runs li").first().locator(".grip").count(), 0);
  await press(page, page.getByRole("button", { name: `Move ${second} down` }));
  await waitForOrder(page, [first, third, second, fourth]);
  assert.ok(await page.getByRole("button", { name: `Move ${third} up` }).isDisabled(), "nothing goes above what is on the press");
});
