import type { Page } from "@playwright/test";

/** Notes every layout shift of the pages that come, as the browser's own Layout Instability API counts it. */
export const noteShifts = (page: Page) =>
  page.addInitScript(() => {
    const shifts: number[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) shifts.push((entry as never as { value: number }).value);
    }).observe({ type: "layout-shift", buffered: true });
  });

/** The shifts on this page so far, each by its score. */
export const shiftsOf = (page: Page) => page.evaluate(() => (window as never as { shifts: number[] }).shifts);
