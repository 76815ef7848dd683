// Runs in each page before the app does: collects its errors, and records when the last touch was, because the app
// ignores bounces.
window.pageErrors = [];
addEventListener("error", (event) => window.pageErrors.push(`${event.message ?? "not loaded"} ${event.filename ?? event.target?.src ?? ""}`), true);
addEventListener("unhandledrejection", (event) => window.pageErrors.push(`rejected: ${event.reason}`));
addEventListener("securitypolicyviolation", (event) => window.pageErrors.push(`policy: ${event.violatedDirective} ${event.blockedURI}`));
const log = console.error;
console.error = (...words) => {
  window.pageErrors.push(words.join(" "));
  log.apply(console, words);
};
for (const kind of ["pointerdown", "pointerup", "pointercancel"]) {
  addEventListener(kind, (event) => { window.lastTouched = event.timeStamp; }, true);
}
