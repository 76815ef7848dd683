// Prints how large each file of the built app is, and how much WebAssembly code in it each crate takes.
//
// The crate of a function is read from its symbol: the first crate named there that is not the standard library. A
// generic function of the standard library counts to the crate of its type if the symbol names it, and to `std`
// otherwise. Code that another crate's generic function was compiled to for our types counts to that crate.
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants } from "node:zlib";
import { OPTIMISE } from "../../../src/build/wasm-opt.mjs";

const NAMED = join(process.env.CARGO_TARGET_DIR ?? "target", "wasm-with-names");
const STANDARD = ["core", "alloc", "std"];

const kB = (bytes) => (bytes / 1000).toFixed(1).padStart(8);
const compressed = (bytes) => brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }).length;

/** Files of the built app by name, with their size by brotli 11. `first` is true if the first screen waits for them. */
export function appFiles(dist = "dist") {
  const folder = join(dist, readdirSync(dist).find((name) => name.startsWith("app-")));
  return readdirSync(folder)
    .filter((name) => /\.(wasm|js|css)$/.test(name))
    .map((name) => {
      const bytes = readFileSync(join(folder, name));
      return { name, bytes, first: !/^((split|chunk)_|pictures|lazy)/.test(name), brotli: compressed(bytes) };
    });
}

/** Crate of a function, by its Rust symbol: mangled (legacy or v0), or a path as wasm-bindgen leaves it. */
export function crateOf(symbol) {
  if (/ (indirect_call|local)_shim$/.test(symbol)) return "(calls between files)";
  const crates = symbol.startsWith("_R") ? cratesOfV0(symbol) : cratesOfPath(symbol.startsWith("_ZN") ? demangleLegacy(symbol) : symbol);
  if (crates.length) return crates.find((crate) => !STANDARD.includes(crate)) ?? "std";
  if (/^(__wbindgen|__wbg|__externref|Closure\()|externref shim$|-> Externref$/.test(symbol)) return "wasm_bindgen";
  // Methods of a primitive type: `<[u8]>::starts_with`.
  if (/^<[\[*&]*([uif]\d+|char|str|bool|[ui]size)\]?>::/.test(symbol)) return "std";
  if (/^(__rust|__rdl|__rg|rust_)/.test(symbol)) return "std";
  if (/^(mem(cpy|move|set|cmp)|__(mul|div|udiv|mod|umod)[a-z]*\d)/.test(symbol)) return "compiler_builtins";
  return "(unknown)";
}

// `_ZN`, then each part of the path with its length in front: https://doc.rust-lang.org/rustc/symbol-mangling/legacy.html
function demangleLegacy(symbol) {
  let rest = symbol.slice(3);
  const parts = [];
  for (let length; (length = /^\d+/.exec(rest)?.[0]); rest = rest.slice(length.length + Number(length))) parts.push(rest.slice(length.length, length.length + Number(length)));
  const text = parts.join("::").replaceAll("..", "::");
  return text.replace(/\$(\w+)\$/g, (_, code) => ({ LT: "<", GT: ">", RF: "&", BP: "*", C: ",", LP: "(", RP: ")", u20: " " })[code] ?? "?").replace(/(^|[^\w:])_</g, "$1<");
}

const cratesOfPath = (path) => [...path.matchAll(/(?:^|[^\w:?])([a-z_][a-z0-9_]*)(?:\[[0-9a-f]+\])?::/g)].map(([, name]) => name);

// A crate root is `C`, with `s<disambiguator>_` in front of its name: https://doc.rust-lang.org/rustc/symbol-mangling/v0.html
function cratesOfV0(symbol) {
  return [...symbol.matchAll(/C(?:s[0-9a-zA-Z]*_)(\d+)_?/g)].map((match) => symbol.substr(match.index + match[0].length, Number(match[1])));
}

/** Sizes of a WebAssembly file in bytes: of the code by crate, of the data segments, of the rest. */
export function wasmSizes(bytes) {
  let at = 8;
  const number = () => {
    let [value, shift, byte] = [0, 0];
    do {
      byte = bytes[at++];
      value += (byte & 127) * 2 ** shift;
      shift += 7;
    } while (byte & 128);
    return value;
  };
  const string = () => {
    const length = number();
    at += length;
    return bytes.toString("utf8", at - length, at);
  };
  const bodies = [];
  const names = new Map();
  const sections = { code: 0, data: 0, other: 0 };
  let imported = 0;
  while (at < bytes.length) {
    const start = at;
    const id = bytes[at++];
    const size = number();
    const end = at + size;
    const custom = id === 0 ? string() : null;
    if (id === 2) imported = importedFunctions();
    else if (id === 10) for (let left = number(); left > 0; left--) {
      const begin = at;
      const length = number();
      at += length;
      bodies.push(at - begin);
    }
    else if (custom === "name") readNames(end);
    // The names are in the measured file only, not in the one that is served.
    if (custom !== "name") sections[{ 10: "code", 11: "data" }[id] ?? "other"] += end - start;
    at = end;
  }
  const crates = {};
  bodies.forEach((size, index) => {
    const crate = crateOf(names.get(imported + index) ?? "");
    crates[crate] = (crates[crate] ?? 0) + size;
  });
  return { crates, ...sections };

  function importedFunctions() {
    let functions = 0;
    for (let left = number(); left > 0; left--) {
      string();
      string();
      const kind = bytes[at++];
      if (kind === 0) functions += 1;
      if (kind === 0) number();
      else if (kind === 3) at += 2;
      else if (kind === 4) at += 1, number();
      else {
        if (kind === 1) at += 1;
        const limits = bytes[at++];
        number();
        if (limits & 1) number();
      }
    }
    return functions;
  }

  function readNames(end) {
    while (at < end) {
      const kind = bytes[at++];
      const size = number();
      const stop = at + size;
      if (kind === 1) for (let left = number(); left > 0; left--) {
        const index = number();
        names.set(index, string());
      }
      at = stop;
    }
  }
}

function table(crates, most) {
  const sorted = Object.entries(crates).sort(([, a], [, b]) => b - a);
  const rest = sorted.slice(most).reduce((sum, [, size]) => sum + size, 0);
  for (const [crate, size] of [...sorted.slice(0, most), ...(rest ? [[`${sorted.length - most} more`, rest]] : [])]) console.log(`${kB(size)}   ${crate}`);
}

/** Prints every file, and the code of each WebAssembly file by crate. */
export function printSizes() {
  if (!existsSync(NAMED)) throw new Error(`${NAMED} is missing: build the app first`);
  const files = appFiles();
  const folder = mkdtempSync(join(tmpdir(), "lastpull-sizes-"));
  const sum = (list) => list.reduce((total, { brotli }) => total + brotli, 0);
  console.log("All sizes in kB (1000 bytes). Files as served (brotli 11), WebAssembly by crate before compression.\n");
  console.log("  brotli        raw   file");
  for (const { name, bytes, first, brotli } of files.toSorted((a, b) => b.first - a.first || b.brotli - a.brotli)) console.log(`${kB(brotli)}   ${kB(bytes.length)}   ${name}${first ? "   (first load)" : ""}`);
  console.log(`${kB(sum(files.filter(({ first }) => first)))}              first load\n${kB(sum(files))}              all files`);
  const whole = {};
  for (const { name, bytes, brotli } of files.filter(({ name }) => name.endsWith(".wasm")).toSorted((a, b) => b.first - a.first || b.brotli - a.brotli)) {
    const measured = join(folder, name);
    // The same optimisation as in the build, but the function names stay.
    execFileSync("wasm-opt", [...OPTIMISE, "-g", join(NAMED, name), "-o", measured], { stdio: ["ignore", "pipe", "pipe"] });
    const { crates, code, data, other } = wasmSizes(readFileSync(measured));
    for (const [crate, size] of Object.entries(crates)) whole[crate] = (whole[crate] ?? 0) + size;
    console.log(`\n${name}: code ${(code / 1000).toFixed(1)}, data ${(data / 1000).toFixed(1)}, tables and imports ${(other / 1000).toFixed(1)} kB; served ${(bytes.length / 1000).toFixed(1)} kB, ${(brotli / 1000).toFixed(1)} kB by brotli`);
    table(crates, code > 20_000 ? 12 : 3);
  }
  console.log("\nCode of all files by crate");
  table(whole, 30);
  rmSync(folder, { recursive: true, force: true });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) printSizes();
