// Firefox, without a window, over WebDriver BiDi (https://w3c.github.io/webdriver-bidi/), which Firefox serves itself.
//
// What differs from Chromium: what was written to localStorage (the device's settings) in the last seconds before a kill is
// gone. Facts are in IndexedDB, and are there.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { captured, orKill, startGroup } from "./processes.mjs";

const Bidi = createRequire(import.meta.url)("selenium-webdriver/bidi");
const IN_PAGE = readFileSync(fileURLToPath(new URL("in-page.js", import.meta.url)), "utf8");

export const NAME = "Firefox";

/** The program, or `undefined` if it is not installed. */
export const program = ["/usr/bin/firefox-esr", "/usr/bin/firefox"].find(existsSync);

/** No traffic of its own, and downloads without a question. */
const preferences = (downloads) => ({
  "app.normandy.enabled": false,
  "app.update.enabled": false,
  "browser.download.dir": downloads,
  "browser.download.folderList": 2,
  "browser.safebrowsing.update.enabled": false,
  "browser.shell.checkDefaultBrowser": false,
  "browser.startup.page": 0,
  "browser.topsites.contile.enabled": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "extensions.getAddons.cache.enabled": false,
  "extensions.update.enabled": false,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "services.settings.server": "data:,#remote-settings-dummy/v1",
  "toolkit.telemetry.enabled": false,
});

/** Starts Firefox with its data in `folder`. See window.mjs for what is returned. */
export async function start(folder) {
  const downloads = join(folder, "downloads");
  mkdirSync(downloads, { recursive: true });
  const lines = Object.entries(preferences(downloads)).map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});`);
  writeFileSync(join(folder, "user.js"), `${lines.join("\n")}\n`);
  const { process, kill } = startGroup(program, ["--headless", "--no-remote", "--profile", folder, "--remote-debugging-port=0", "about:blank"], { stdio: ["ignore", "ignore", "pipe"] });
  return orKill(kill, async () => connect(await captured(process.stderr, /WebDriver BiDi listening on (ws:\S+)/), downloads, kill));
}

async function connect(address, downloads, kill) {
  const bidi = new Bidi(`${address}/session`);
  await bidi.waitForConnection();
  const send = async (method, params) => {
    const answer = await bidi.send({ method, params });
    if (answer.type === "error") throw new Error(`${method}: ${answer.error}: ${answer.message}`);
    return answer.result;
  };
  const { capabilities } = await send("session.new", { capabilities: {} });
  await send("script.addPreloadScript", { functionDeclaration: `() => { ${IN_PAGE} }` });
  const { contexts: [{ context }] } = await send("browsingContext.getTree", {});
  await send("browsingContext.setViewport", { context, viewport: { width: 800, height: 900 } });

  const perform = (actions) => send("input.performActions", { context, actions });
  const call = async (text, ownership = "none") => {
    const result = await send("script.callFunction", { functionDeclaration: text, awaitPromise: true, target: { context }, resultOwnership: ownership, userActivation: false });
    if (result.type === "exception") throw new Error(`${result.exceptionDetails.text}: ${text}`);
    return result.result;
  };
  return {
    name: `Firefox ${capabilities.browserVersion}`,
    downloads,
    goto: (url) => send("browsingContext.navigate", { context, url, wait: "complete" }),
    reload: () => send("browsingContext.reload", { context, wait: "complete" }),
    async run(work, ...args) {
      const { value } = await call(`async () => JSON.stringify({ value: await (${work})(...${JSON.stringify(args)}) })`);
      return JSON.parse(value).value;
    },
    touch: (x, y) => perform([{ type: "pointer", id: "finger", parameters: { pointerType: "touch" }, actions: [
      { type: "pointerMove", x: Math.round(x), y: Math.round(y) },
      { type: "pointerDown", button: 0 },
      { type: "pointerUp", button: 0 },
    ] }]),
    type: (text) => perform([{ type: "key", id: "keys", actions: [...text].flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]) }]),
    async chooseFile(selector, path) {
      const element = await call(`() => document.querySelector(${JSON.stringify(selector)})`);
      await send("input.setFiles", { context, element: { sharedId: element.sharedId }, files: [path] });
    },
    kill,
  };
}
