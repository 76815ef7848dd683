// WebKitGTK on a display of its own, over WebDriver (https://www.w3.org/TR/webdriver2/).
//
// What differs from Chromium: WebKitWebDriver has a mouse and no touch pointer, and reads no console, so that errors are
// collected in the page. MiniBrowser, which it starts by default, keeps nothing: see webkit-window.py.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { captured, freePort, listening, orKill, startGroup } from "./processes.mjs";

const { Builder, Capabilities } = createRequire(import.meta.url)("selenium-webdriver");
const here = (name) => fileURLToPath(new URL(name, import.meta.url));

export const NAME = "WebKit";
// The distribution's Python: its packages hold the bindings of WebKit.
const PYTHON = "/usr/bin/python3";
const DRIVER = "/usr/bin/WebKitWebDriver";
const DISPLAY = "/usr/bin/Xvfb";

const hasBindings = () => spawnSync(PYTHON, ["-c", "import gi; gi.require_version('Gtk', '3.0'); gi.require_version('WebKit2', '4.1')"]).status === 0;

/** The driver, or `undefined` if something that it needs is not installed. */
export const program = [PYTHON, DRIVER, DISPLAY].every(existsSync) && hasBindings() ? DRIVER : undefined;

/** Starts a window with its data in `folder`. See window.mjs for what is returned. */
export async function start(folder) {
  const downloads = join(folder, "downloads");
  mkdirSync(downloads, { recursive: true });
  const screen = startGroup(DISPLAY, ["-displayfd", "3", "-screen", "0", "1024x1000x24", "-nolisten", "tcp"], { stdio: ["ignore", "ignore", "ignore", "pipe"] });
  const display = await orKill(screen.kill, () => captured(screen.process.stdio[3], /(\d+)\n/));
  // The bubblewrap sandbox of the web process is not available to root, nor in most containers.
  const env = { DISPLAY: `:${display}`, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1", GDK_BACKEND: "x11" };
  const port = await freePort();
  const driver = startGroup(DRIVER, [`--port=${port}`], { env });
  const kill = async () => {
    // The driver's group includes the window and WebKit's processes.
    await driver.kill();
    await screen.kill();
  };
  return orKill(kill, async () => {
    await listening(port, driver.process);
    return connect(port, folder, downloads, kill);
  });
}

async function connect(port, folder, downloads, kill) {
  const options = { binary: PYTHON, args: [here("webkit-window.py"), folder, here("in-page.js")] };
  const web = await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(new Capabilities({ browserName: "WebKitWindow", "webkitgtk:browserOptions": options })).build();
  await web.manage().setTimeouts({ script: 30_000, pageLoad: 60_000 });
  const capabilities = await web.getCapabilities();
  return {
    name: `WebKitGTK ${capabilities.get("browserVersion")}`,
    downloads,
    goto: (url) => web.get(url),
    reload: () => web.navigate().refresh(),
    async run(work, ...args) {
      const answer = await web.executeAsyncScript(`const answer = arguments[0];
        (async () => (${work})(...${JSON.stringify(args)}))().then((value) => answer({ value }), (error) => answer({ error: String(error) }));`);
      if ("error" in answer) throw new Error(answer.error);
      return answer.value;
    },
    // By mouse: the app hears the same pointer events.
    touch: (x, y) => web.actions().move({ x: Math.round(x), y: Math.round(y), duration: 0 }).press().release().perform(),
    type: (text) => web.actions().sendKeys(text).perform(),
    chooseFile: (selector, path) => web.findElement({ css: selector }).sendKeys(path),
    kill,
  };
}
