// The demo shop, the languages and the themes.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK } from "../support/browser.mjs";
import { exportBackup } from "../support/backup.mjs";
import { pull, waitUntilSaved } from "../support/counting.mjs";
import { fillForm, go, press, save, waitUntil } from "../support/page.mjs";
import { newDevice, openDemo, openFirst, openShop, testServer } from "../support/setup.mjs";

const app = testServer();

const databases = (page) => page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));
const deviceSettings = (page) => page.evaluate(() => JSON.parse(localStorage.getItem("lastpull.device") ?? "{}"));

async function leaveDemo(page) {
  await press(page, "#demo-banner button");
  await page.locator("#demo-banner").waitFor({ state: "detached" });
}

async function waitUntilDeleted(page) {
  await waitUntil(page, async () => !(await indexedDB.databases()).some(({ name }) => name === "lastpull-demo"));
}

test("the demo shop fills every page, and leaving it deletes its data", async (t) => {
  const page = await openDemo(t, app);
  assert.equal(await page.locator(".rail-runs > li").count(), 4);
  assert.equal(await page.locator("#done-jobs").innerText(), "1");
  assert.equal(await page.locator("#done-pieces").innerText(), "35");
  await go(page, "#/press", "#zone");
  assert.equal(await page.locator("#count").innerText(), "17");
  await page.locator("#finish").waitFor();
  await page.locator("#chance").waitFor();
  await press(page, "#pace");
  await page.locator("dialog").getByText("timed in this run").waitFor();
  await page.locator("dialog .pace-chart svg").waitFor();
  await press(page, "dialog .sheet-head .icon-button");
  await waitUntilSaved(page, 17);
  await pull(page, 1);
  await go(page, "#/jobs", ".job-row");
  assert.ok((await page.locator(".job-row").count()) >= 10);
  await press(page, page.locator(".job-row").first());
  await page.locator(".lot .run-row").first().waitFor();
  await go(page, "#/more/settings", "#crew");
  assert.equal(await page.locator("#shop_name").inputValue(), "Two Kettles Print Shop");
  await go(page, "#/more/about", "#facts");
  assert.ok(Number(await page.locator("#facts").getAttribute("data-facts")) > 300);
  assert.equal(await page.locator("#erase").count(), 0, "the demo has nothing of its own to erase");
  assert.ok((await databases(page)).includes("lastpull-demo"));
  await page.reload();
  await page.locator("#demo-banner").waitFor();

  await leaveDemo(page);
  await page.locator("#start-shop").waitFor();
  await waitUntilDeleted(page);
  assert.ok(!(await deviceSettings(page)).demo, "no mark of the demo among the settings");
  await page.reload();
  await page.locator("#start-shop").waitFor();
  assert.ok(!(await databases(page)).includes("lastpull-demo"));
});

test("opening the demo leaves one's own shop unchanged", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/more/settings", "#crew");
  await fillForm(page, { shop_name: "Harbour Prints", crew: "Ines, Moss" });
  await save(page);
  await page.getByText("Saved.").waitFor();
  await exportBackup(page);
  await page.getByText("Last backup").waitFor();
  const before = await deviceSettings(page);

  await go(page, "#/more", ".menu");
  await press(page, ".more .card button");
  await page.locator("#demo-banner").waitFor();
  await page.locator(".rail-runs > li").first().waitFor();
  await leaveDemo(page);
  await page.locator(".page.day").waitFor();
  await waitUntilDeleted(page);
  await go(page, "#/more/settings", "#crew");
  assert.equal(await page.locator("#shop_name").inputValue(), "Harbour Prints");
  await go(page, "#/more/backup", "#prepare");
  assert.deepEqual(await deviceSettings(page), before, "the device's own settings and its last backup are as before");
});

test("a backup prepared in the demo is gone when the demo is left", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/more/backup", "#prepare");
  await press(page, "#prepare");
  await page.locator("#download").waitFor();
  await leaveDemo(page);
  await page.locator("#start-shop").waitFor();
  await press(page, "#have-file");
  await page.locator("#prepare, #download").waitFor();
  assert.equal(await page.locator("#download").count(), 0, "the demo's file is not offered as one's own");
});

test("the press tab lists waiting runs after a run has ended", async (t) => {
  const page = await openDemo(t, app);
  await press(page, ".place[href='#/press']");
  await page.locator("#zone").waitFor();
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await page.locator("#ended-good").waitFor();
  await press(page, ".place[href='#/press']");
  await page.locator(".press-pick").waitFor({ timeout: 5000 });
});

test("switching to Spanish and back changes texts and page language", async (t) => {
  const page = await openDemo(t, app, { device: DESK });
  const lang = () => page.evaluate(() => document.documentElement.lang);
  await go(page, "#/more/settings", "#crew");
  assert.equal(await lang(), "en");
  await press(page, "#language-1");
  await page.getByRole("heading", { name: "Ajustes", level: 1 }).waitFor();
  assert.equal(await lang(), "es");
  await go(page, "#/", "#verdict");
  await page.getByRole("heading", { name: "Hoy", exact: true }).waitFor();
  await page.reload();
  await page.getByRole("heading", { name: "Hoy", exact: true }).waitFor();
  assert.equal(await lang(), "es");
  await go(page, "#/more/settings", "#crew");
  await press(page, "#language-0");
  await page.getByRole("heading", { name: "Settings", level: 1 }).waitFor();
  assert.equal(await lang(), "en");
});

test("a Spanish browser gets Spanish and metric units", async (t) => {
  const page = await openFirst(t, app, { locale: "es-ES" });
  await page.getByText("Empezar mi taller").waitFor();
  await press(page, "#open-demo");
  await page.locator("#verdict").waitFor();
  await press(page, page.locator(".run-link").nth(1));
  await page.locator("[data-item=Dryer]").getByText("°C").first().waitFor();
});

test("the demo opened in Spanish is in Spanish, also after changing the language", async (t) => {
  const page = await openDemo(t, app, { settings: { language: "spanish" } });
  await page.locator(".rail-runs > li").filter({ hasText: "Camisetas de la gira" }).waitFor();
  assert.equal(await page.locator(".rail-runs > li").count(), 4);
  assert.equal(await page.locator("#done-pieces").innerText(), "35");
  await go(page, "#/more/settings", "#crew");
  assert.equal(await page.locator("#crew").inputValue(), "Inés, Beto");
  await press(page, "#language-0");
  await page.getByRole("heading", { name: "Settings", level: 1 }).waitFor();
  await page.locator("#shop_name").waitFor();
  assert.equal(await page.locator("#shop_name").inputValue(), "Serigrafía Las Dos Ollas");
  await leaveDemo(page);
  await page.locator("#start-shop").waitFor();
  await press(page, "#open-demo");
  await page.locator(".rail-runs > li").filter({ hasText: "Tour tees" }).waitFor();
});

test("the amber theme is set on the page and survives a reload", async (t) => {
  const page = await openDemo(t, app);
  const theme = () => page.evaluate(() => document.documentElement.dataset.theme);
  await go(page, "#/more/settings", "#crew");
  assert.equal(await theme(), "device");
  await press(page, "#theme-3");
  await page.getByText("keeps blue light low").waitFor();
  assert.equal(await theme(), "amber");
  await page.reload();
  await page.locator("#crew").waitFor();
  assert.equal(await theme(), "amber");
});

test("the demo's button pressed twice keeps the settings of one's own shop", async (t) => {
  const context = await newDevice(t, app, { settings: { started: true, crew: "Ines", backed_up: 1790000000000, backed_up_facts: 5 } });
  const page = await context.tab();
  await page.goto(`${app.server.url}#/more`);
  await page.locator(".more .card button").first().waitFor();
  await page.evaluate(() => {
    const button = document.querySelector(".more .card button");
    button.click();
    button.click();
  });
  await page.locator(".rail-runs > li").first().waitFor();
  await leaveDemo(page);
  await waitUntilDeleted(page);
  const { crew, backed_up, backed_up_facts, demo } = await deviceSettings(page);
  assert.deepEqual({ crew, backed_up, backed_up_facts, demo }, { crew: "Ines", backed_up: 1790000000000, backed_up_facts: 5, demo: false });
});
