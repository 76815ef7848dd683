// Builds the app into dist/, a folder that any static host serves at any path:
//   cargo          one WebAssembly file, with the relocations that splitting needs
//   wasm-split     one file for the first screen, one for each chunk that loads later
//   wasm-bindgen   the script that loads them
//   wasm-opt       not with `--quick`, a faster build for trying things
// Everything the page loads is in a folder named by the hash of its contents, so that two builds never mix. The service
// worker gets the list of files to keep for offline use.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { OPTIMISE, STRIP } from "./wasm-opt.mjs";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
process.chdir(root);
const quick = process.argv.includes("--quick");
const wasmTarget = "wasm32-unknown-unknown";
const target = process.env.CARGO_TARGET_DIR ?? "target";
const fingerprint = (data) => createHash("sha256").update(data).digest("hex").slice(0, 16);
const run = (program, ...args) => execFileSync(program, args, { stdio: ["ignore", 2, 2] });
/** Hides what the program prints, unless it fails: for programs with useless warnings. */
const runQuietly = (program, ...args) => {
  try {
    execFileSync(program, args, { stdio: ["ignore", "pipe", "pipe"] });
  } catch (error) {
    process.stderr.write(error.stderr ?? "");
    throw error;
  }
};
/** Replaces the one place that matches; an error if there is none, or more than one. */
const replaceOnce = (text, pattern, replacement, file) => {
  const parts = text.split(pattern);
  if (parts.length !== 2) throw new Error(`${file}: ${pattern} matches ${parts.length - 1} times instead of once`);
  return parts.join(replacement);
};
const filesIn = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)))
    .sort();

const staging = join(target, "dist");
const app = join(staging, "app");
rmSync(staging, { recursive: true, force: true });
mkdirSync(app, { recursive: true });

run("cargo", "build", "--quiet", "--package", "lastpull", "--bin", "lastpull-app", "--features", "chunks", "--target", wasmTarget, ...(quick ? [] : ["--release"]));
const whole = join(target, wasmTarget, quick ? "debug" : "release", "lastpull-app.wasm");
const split = join(target, "split");
rmSync(split, { recursive: true, force: true });
run("wasm-split-cli", whole, split, "--target", "web", "--out-name", "lastpull");
run("wasm-bindgen", "--target", "web", "--no-typescript", "--keep-lld-exports", "--out-dir", app, "--out-name", "lastpull", join(split, "lastpull.wasm"));
for (const name of readdirSync(split).filter((name) => name !== "lastpull.wasm")) cpSync(join(split, name), join(app, name));
const wasmFiles = readdirSync(app).filter((name) => name.endsWith(".wasm"));
// With function names and not optimised, for `./dev bench --sizes`.
const named = join(target, "wasm-with-names");
rmSync(named, { recursive: true, force: true });
for (const name of wasmFiles) cpSync(join(app, name), join(named, name));
if (!quick) for (const name of wasmFiles) runQuietly("wasm-opt", ...OPTIMISE, ...STRIP, join(app, name), "-o", join(app, name));
// The content security policy allows no inline script: the start script is a file of its own.
cpSync("src/start.js", join(app, "start.js"));
cpSync("src/platform/workers", app, { recursive: true });

// The style sheets in the order of index.html: one file for the first screen, one that loads with the chunks.
let html = readFileSync("index.html", "utf8");
const sheets = [...html.matchAll(/^ *<link rel="stylesheet" href="(style\/[a-z0-9_/-]+\.css)"( data-lazy)? \/>\n/gm)];
const listed = sheets.map((sheet) => sheet[1]);
const unlisted = filesIn("style").map((name) => `style/${name.replaceAll("\\", "/")}`).filter((name) => !listed.includes(name));
if (unlisted.length) throw new Error(`index.html does not list ${unlisted.join(", ")}`);
const unread = html.match(/href="style\/[^"]*"/g)?.length ?? 0;
if (unread !== listed.length) throw new Error(`index.html: ${unread} links to style/, of which ${listed.length} are on a line of the expected form`);
const concatenated = (later) => sheets
  .filter((sheet) => Boolean(sheet[2]) === later)
  .map((sheet) => readFileSync(sheet[1], "utf8").replaceAll(/\/\*[^]*?\*\//g, "").replaceAll(/\s*\n\s*/g, "\n"))
  .join("");
writeFileSync(join(app, "style.css"), concatenated(false));
writeFileSync(join(app, "lazy.css"), concatenated(true));

const folder = `app-${fingerprint(filesIn(app).map((name) => `${name} ${fingerprint(readFileSync(join(app, name)))}`).join("\n"))}`;
renameSync(app, join(staging, folder));
const head = [
  // Async and first: compiling the app takes longest, and must not wait for the style sheet or the rest of the page.
  `<script type="module" async data-start src="./${folder}/start.js"></script>`,
  // How that ended, and the message if it failed.
  `<script defer src="./recover.js"></script>`,
  `<link rel="stylesheet" href="./${folder}/style.css" />`,
  `<link rel="modulepreload" href="./${folder}/lastpull.js" />`,
  `<link rel="modulepreload" href="./${folder}/__wasm_split.js" />`,
  `<link rel="preload" href="./${folder}/lastpull_bg.wasm" as="fetch" type="application/wasm" crossorigin />`,
];
for (const sheet of sheets) html = replaceOnce(html, sheet[0], "", "index.html");
html = replaceOnce(html, "  </head>", `${head.map((line) => `    ${line}\n`).join("")}  </head>`, "index.html");
writeFileSync(join(staging, "index.html"), html);
cpSync("public", staging, { recursive: true });
rmSync(join(staging, "pictures", ".gitkeep"), { force: true });

// The pictures are for the README and the browser's install dialog; the service worker does not cache itself.
const files = filesIn(staging).filter((name) => !name.startsWith("pictures/") && !["sw.js", "_headers"].includes(name));
const build = fingerprint(files.map((name) => `${name} ${fingerprint(readFileSync(join(staging, name)))}`).join("\n"));
const manifest = {
  cache: `lastpull-${build}`,
  folder: `./${folder}/`,
  files: files.map((name) => (name === "index.html" ? "./" : `./${name}`)),
};
writeFileSync(
  join(staging, "sw.js"),
  replaceOnce(readFileSync("public/sw.js", "utf8"), /^const MANIFEST = .*;$/m, `const MANIFEST = ${JSON.stringify(manifest)};`, "public/sw.js"),
);

// Swap: the folder being served stays until the new one is complete.
const old = `${staging}-old`;
rmSync(old, { recursive: true, force: true });
if (existsSync("dist")) renameSync("dist", old);
renameSync(staging, "dist");
rmSync(old, { recursive: true, force: true });
console.error(`  build ${build}: ${files.length} files kept for offline use`);
