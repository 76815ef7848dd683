// Errors inside a page that no test expects.

/** Errors of a browser without a network. */
export const OFFLINE_ERRORS = [
  /net::ERR_(CONNECTION_REFUSED|CONNECTION_RESET|FAILED|EMPTY_RESPONSE|INTERNET_DISCONNECTED)/,
  /Failed to update a ServiceWorker|unknown error occurred when fetching the script/,
];

/** Collects console errors, uncaught exceptions and rejections of a page, except those that match `expected`. */
export function collectErrors(page, expected = []) {
  const errors = [];
  const add = (text) => expected.some((pattern) => pattern.test(text)) || errors.push(text);
  page.on("console", (message) => message.type() === "error" && add(`${message.text()} ${message.location().url}`));
  page.on("pageerror", (error) => add(`${error.name}: ${error.message}`));
  return errors;
}

/** Runs in the page before the app does: reports violations of the content security policy as console errors. */
export function reportPolicyViolations() {
  addEventListener("securitypolicyviolation", (event) => console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`));
}
