// The day's rail: its order, closing, and what it says of them.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, PHONE, addGarments, addRun, day, go, newJob, openDemo, openShop, premises, press } from "../support/shop.mjs";
import { middle } from "../support/counting.mjs";
import { fingers } from "../support/touch.mjs";

const place = premises();

const order = (page) => page.locator(".rail-runs .run-words strong").allInnerTexts();

async function comesTo(page, titles) {
  await page.waitForFunction(
    (titles) => JSON.stringify([...document.querySelectorAll(".rail-runs .run-words strong")].map((title) => title.innerText)) === titles,
    JSON.stringify(titles),
  ).catch(async () => assert.deepEqual(await order(page), titles));
}

/** A shop with three jobs, in the order they are due. */
async function threeJobs(t, device) {
  const page = await openShop(t, place, { device });
  for (const [days, title] of [[0, "Tour tees"], [1, "Crew jerseys"], [2, "Swap day totes"]]) {
    await newJob(page, { title, due_day: day(days) });
    await addGarments(page, { "size-s": 4, "size-m": "", "size-l": "" });
    await addRun(page, { guess: 60 });
  }
  await go(page, "#/", "#verdict");
  // On a weekend the shop is closed until somebody says otherwise.
  if (await page.locator(".closing .button").count()) await press(page, ".closing .button");
  await comesTo(page, ["Tour tees", "Crew jerseys", "Swap day totes"]);
  return page;
}

for (const [name, device] of Object.entries({ "a phone": PHONE, "a desk": DESK })) {
  test(`on ${name} a run is moved by buttons; the order outlasts a reload, and undo restores it`, async (t) => {
    const page = await threeJobs(t, device);
    await press(page, page.getByRole("button", { name: "Move Tour tees down" }));
    await comesTo(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
    await page.getByText("Tour tees is number 2 now.").waitFor();
    await press(page, page.getByRole("button", { name: "Move Swap day totes up" }));
    await comesTo(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await page.reload();
    await comesTo(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await press(page, page.getByRole("button", { name: "Move Swap day totes up" }));
    await comesTo(page, ["Swap day totes", "Crew jerseys", "Tour tees"]);
    await press(page, ".notice-undo");
    await comesTo(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await page.reload();
    await comesTo(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    assert.ok(await page.getByRole("button", { name: "Move Crew jerseys up" }).isDisabled(), "the first goes no higher");
    assert.ok(await page.getByRole("button", { name: "Move Tour tees down" }).isDisabled(), "the last goes no lower");
  });

  test(`on ${name} a run is dragged by its grip; the order outlasts a reload, and undo restores it`, async (t) => {
    const page = await threeJobs(t, device);
    await page.locator(".rail-runs li").nth(1).evaluate((row) => row.scrollIntoView({ block: "center" }));
    const grip = await middle(page.locator(".grip").nth(1));
    const first = await page.locator(".rail-runs li").first().boundingBox();
    const goal = [grip[0], first.y + 20];
    if (device.hasTouch) {
      const hand = await fingers(page);
      await hand.down({ id: 1, x: grip[0], y: grip[1] });
      for (let step = 1; step <= 8; step += 1) await hand.move({ id: 1, x: grip[0], y: grip[1] + ((goal[1] - grip[1]) * step) / 8 });
      await page.locator("li.dragged").waitFor();
      await hand.up();
    } else {
      await page.mouse.move(...grip);
      await page.mouse.down();
      await page.mouse.move(...goal, { steps: 8 });
      await page.locator("li.dragged").waitFor();
      await page.mouse.up();
    }
    await comesTo(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
    await page.reload();
    await comesTo(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
    await press(page, page.getByRole("button", { name: "Move Tour tees down" }));
    await comesTo(page, ["Crew jerseys", "Swap day totes", "Tour tees"]);
    await press(page, ".notice-undo");
    await comesTo(page, ["Crew jerseys", "Tour tees", "Swap day totes"]);
  });
}

test("a drag that is let go where it began changes nothing", async (t) => {
  const page = await threeJobs(t, DESK);
  const grip = await middle(page.locator(".grip").nth(1));
  await page.mouse.move(...grip);
  await page.mouse.down();
  await page.mouse.move(grip[0], grip[1] + 12, { steps: 3 });
  await page.mouse.up();
  await page.locator("li.dragged").waitFor({ state: "detached" });
  assert.deepEqual(await order(page), ["Tour tees", "Crew jerseys", "Swap day totes"]);
  assert.equal(await page.locator(".notice").count(), 0);
});

test("closing moves by half an hour in one touch, and stays moved", async (t) => {
  const page = await threeJobs(t, PHONE);
  const says = (time) => page.locator("#closing").getByText(`Closing ${time}`).waitFor();
  await says("5:00\u00a0pm");
  await press(page, page.getByRole("button", { name: "half an hour earlier" }));
  await says("4:30\u00a0pm");
  await page.getByText("Closing today is 4:30\u00a0pm now.").waitFor();
  await page.reload();
  await says("4:30\u00a0pm");
  for (let twice = 0; twice < 2; twice += 1) await press(page, page.getByRole("button", { name: "half an hour later" }));
  await says("5:30\u00a0pm");
});

test("a run that will not be out by closing is said first, and beside the run", async (t) => {
  const page = await threeJobs(t, PHONE);
  await page.locator("#verdict.good").getByText("before closing").waitFor();
  await newJob(page, { title: "Marathon tees" });
  await addGarments(page, { "size-s": 60, "size-m": "", "size-l": "" });
  await addRun(page, { guess: 900 });
  await go(page, "#/", "#verdict");
  await page.locator("#verdict.bad").getByText("1 run will not be out by closing").waitFor();
  const block = page.locator(".rail-runs li").filter({ hasText: "Marathon tees" });
  await block.locator("[data-fit=misses]").waitFor();
  await block.getByText("Past closing").waitFor();
});

test("a run without a known pace is said in the verdict", async (t) => {
  const page = await threeJobs(t, PHONE);
  await newJob(page, { title: "Unknown tees" });
  await addGarments(page);
  await addRun(page);
  await go(page, "#/", "#verdict");
  await page.locator("#verdict.tight").getByText("1 run without a known pace").waitFor();
});

test("what is on the press stays in front of what is moved", async (t) => {
  const page = await openDemo(t, place);
  const [first, second, third, fourth] = await order(page);
  assert.equal(await page.locator(".rail-runs li").first().locator(".grip").count(), 0);
  await press(page, page.getByRole("button", { name: `Move ${second} down` }));
  await comesTo(page, [first, third, second, fourth]);
  assert.ok(await page.getByRole("button", { name: `Move ${third} up` }).isDisabled(), "nothing goes above what is on the press");
});
