// Options of wasm-opt, for the build and for measuring what each crate takes in it.

// The features that the Rust target uses. The chunks do not declare them, and with all features enabled wasm-opt would
// emit instructions that browsers do not support yet.
const FEATURES = ["bulk-memory", "bulk-memory-opt", "multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types", "sign-ext"];

// A function that is called once stays one: the file is 5 kB larger with it, but 1.5 kB smaller by brotli (2026-11-30).
const INLINE = "--one-caller-inline-max-function-size=0";

export const OPTIMISE = ["-Oz", INLINE, "--mvp-features", ...FEATURES.map((name) => `--enable-${name}`)];
export const STRIP = ["--strip-debug", "--strip-producers", "--strip-target-features"];
