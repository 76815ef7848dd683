// Builds the app into dist/, a folder that any static host serves at any path:
//   cargo      one WebAssembly file, with the addresses that splitting needs left in
//   wasm-split one file for what the first screen needs, one for each part of src/later.rs
//   wasm-bindgen, wasm-opt
// Everything the page loads lies in a folder named by the fingerprint of its contents, so that two builds
// never mix; the service worker gets the list of files. `--quick` leaves out optimising, for trying things.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
process.chdir(root);
const quick = process.argv.includes("--quick");
const wasmTarget = "wasm32-unknown-unknown";
const target = process.env.CARGO_TARGET_DIR ?? "target";
const fingerprint = (data) => createHash("sha256").update(data).digest("hex").slice(0, 16);
const run = (program, ...args) => execFileSync(program, args, { stdio: ["ignore", 2, 2] });
/** The same, where the program warns of what is of no use to know; on failure everything is told. */
const runQuietly = (program, ...args) => {
  try {
    execFileSync(program, args, { stdio: ["ignore", "pipe", "pipe"] });
  } catch (error) {
    process.stderr.write(error.stderr);
    throw error;
  }
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

run("cargo", "build", "--quiet", "--package", "lastpull", "--bin", "lastpull-app", "--features", "parts", "--target", wasmTarget, ...(quick ? [] : ["--release"]));
const whole = join(target, wasmTarget, quick ? "debug" : "release", "lastpull-app.wasm");
const split = join(target, "split");
rmSync(split, { recursive: true, force: true });
run("wasm-split-cli", whole, split, "--target", "web", "--out-name", "lastpull");
run("wasm-bindgen", "--target", "web", "--no-typescript", "--keep-lld-exports", "--out-dir", app, "--out-name", "lastpull", join(split, "lastpull.wasm"));
for (const name of readdirSync(split).filter((name) => name !== "lastpull.wasm")) cpSync(join(split, name), join(app, name));
if (!quick) {
  // What the Rust target uses. The parts that are split off do not say so themselves, and naming every
  // feature would have wasm-opt write forms that browsers do not read yet.
  const features = ["bulk-memory", "bulk-memory-opt", "multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types", "sign-ext"];
  const flags = ["-Oz", "--mvp-features", ...features.map((name) => `--enable-${name}`), "--strip-debug", "--strip-producers", "--strip-target-features"];
  for (const name of readdirSync(app).filter((name) => name.endsWith(".wasm"))) runQuietly("wasm-opt", ...flags, join(app, name), "-o", join(app, name));
}
// The content security policy allows nothing inline: what starts the app is a file, and so is what runs beside it.
cpSync("src/start.js", join(app, "start.js"));
for (const thread of ["disk.js", "pictures.js"]) cpSync(join("src/platform", thread), join(app, thread));

// The style sheets that the page names, in its order: those of the first screen as one, those of the parts as another.
let html = readFileSync("index.html", "utf8");
const sheets = [...html.matchAll(/^ *<link rel="stylesheet" href="(style\/[a-z_]+\.css)"( data-later)? \/>\n/gm)];
const forgotten = readdirSync("style").filter((name) => !sheets.some((sheet) => sheet[1] === `style/${name}`));
if (forgotten.length) throw new Error(`index.html does not name style/${forgotten.join(", style/")}`);
const joined = (later) => sheets
  .filter((sheet) => Boolean(sheet[2]) === later)
  .map((sheet) => readFileSync(sheet[1], "utf8").replaceAll(/\/\*[^]*?\*\//g, "").replaceAll(/\s*\n\s*/g, "\n"))
  .join("");
writeFileSync(join(app, "style.css"), joined(false));
writeFileSync(join(app, "later.css"), joined(true));

const folder = `app-${fingerprint(filesIn(app).map((name) => `${name} ${fingerprint(readFileSync(join(app, name)))}`).join("\n"))}`;
renameSync(app, join(staging, folder));
const head = [
  // Without waiting for the style or the rest of the page: compiling the app takes longest.
  `<script type="module" async src="./${folder}/start.js"></script>`,
  `<link rel="stylesheet" href="./${folder}/style.css" />`,
  `<link rel="modulepreload" href="./${folder}/lastpull.js" />`,
  `<link rel="modulepreload" href="./${folder}/__wasm_split.js" />`,
  `<link rel="preload" href="./${folder}/lastpull_bg.wasm" as="fetch" type="application/wasm" crossorigin />`,
];
for (const sheet of sheets) html = html.replace(sheet[0], "");
html = html.replace("  </head>", `${head.map((line) => `    ${line}\n`).join("")}  </head>`);
writeFileSync(join(staging, "index.html"), html);
cpSync("public", staging, { recursive: true });
rmSync(join(staging, "pictures", ".gitkeep"), { force: true });

const kept = filesIn(staging)
  // Pictures are for the store page of a browser, not for the app; the worker does not keep itself.
  .filter((name) => !name.startsWith("pictures/") && !["sw.js", "_headers"].includes(name));
const build = fingerprint(kept.map((name) => `${name} ${fingerprint(readFileSync(join(staging, name)))}`).join("\n"));
writeFileSync(
  join(staging, "sw.js"),
  readFileSync("public/sw.js", "utf8")
    .replace("BUILD_FINGERPRINT", build)
    .replace("APP_FOLDER", folder)
    .replace("/* FILES */", kept.map((name) => JSON.stringify(name === "index.html" ? "./" : `./${name}`)).join(", ")),
);

// The folder served so far stays until the new one is whole.
const old = `${staging}-old`;
rmSync(old, { recursive: true, force: true });
if (existsSync("dist")) renameSync("dist", old);
renameSync(staging, "dist");
rmSync(old, { recursive: true, force: true });
console.error(`  build ${build}: ${kept.length} files kept for offline use`);
