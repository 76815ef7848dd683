// A watch that the test winds on: stops and paces take minutes, tests do not.

/** Runs in the page before the app does: the time of day goes on from where it was wound to. */
export function windable() {
  const ahead = () => Number(localStorage.getItem("test.ahead") ?? 0);
  const Real = Date;
  window.Date = class extends Real {
    constructor(...all) {
      super(...(all.length ? all : [Real.now() + ahead()]));
    }

    static now() {
      return Real.now() + ahead();
    }
  };
}

/** Winds it on by so many seconds. */
export function later(page, seconds) {
  return page.evaluate((seconds) => {
    localStorage.setItem("test.ahead", String(Number(localStorage.getItem("test.ahead") ?? 0) + seconds * 1000));
  }, seconds);
}
