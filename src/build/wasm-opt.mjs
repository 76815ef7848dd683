// Options of wasm-opt, for the build and for measuring what each crate takes in it.

// The features that the Rust target uses. The chunks do not declare them, and with all features enabled wasm-opt would
// emit instructions that browsers do not support yet.
const FEATURES = ["bulk-memory", "bulk-memory-opt", "multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types", "sign-ext"];

export const OPTIMISE = ["-Oz", "--mvp-features", ...FEATURES.map((name) => `--enable-${name}`)];
export const STRIP = ["--strip-debug", "--strip-producers", "--strip-target-features"];
