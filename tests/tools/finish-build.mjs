// Runs after every Trunk build, on the folder it is about to hand over:
// moves the inline start script into a file (the content security policy allows nothing inline), and
// writes the list of files and their common fingerprint into the service worker.
import { createHash } from "node:crypto";
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";

const folder = process.env.TRUNK_STAGING_DIR ?? process.argv[2];
const fingerprint = (data) => createHash("sha256").update(data).digest("hex").slice(0, 16);

const page = join(folder, "index.html");
let html = readFileSync(page, "utf8");
html = html.replace(/<script type="module">([\s\S]*?)<\/script>/g, (_, code) => {
  const name = `start-${fingerprint(code)}.js`;
  writeFileSync(join(folder, name), code.trim() + "\n");
  return `<script type="module" src="./${name}"></script>`;
});
if (/<script(?![^>]*\bsrc=)/.test(html)) throw new Error("an inline script is left in index.html");
writeFileSync(page, html);

const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)))
  // Pictures are for the store page of a browser, not for the app; the worker does not keep itself.
  .filter((name) => !name.startsWith("pictures/") && !["sw.js", "_headers"].includes(name))
  .sort();
const build = fingerprint(files.map((name) => `${name} ${fingerprint(readFileSync(join(folder, name)))}`).join("\n"));
const worker = join(folder, "sw.js");
const kept = files.map((name) => (name === "index.html" ? "./" : `./${name}`));
writeFileSync(
  worker,
  readFileSync(worker, "utf8")
    .replace("BUILD_FINGERPRINT", build)
    .replace("/* FILES */", kept.map((name) => JSON.stringify(name)).join(", ")),
);
console.log(`build ${build}: ${files.length} files kept for offline use`);
