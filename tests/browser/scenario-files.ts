import { expect, type Page } from "@playwright/test";
import { flow } from "./expected.ts";

/** Waits for the scenarios that come in idle time: a page that has them works without a connection. */
export function watchScenarioFiles(page: Page): () => Promise<void> {
  const came = new Set<string>();
  page.on("requestfinished", (request) => {
    const [, id] = /\/parts\/([a-z-]+)-en-[A-Z]{2}-[\da-f]{8}\.json$/.exec(request.url()) ?? [];
    if (id) came.add(id);
  });
  return () =>
    expect(async () => {
      await page.clock.runFor(1000);
      expect(Object.keys(flow.scenarios).filter((id) => !came.has(id))).toEqual([]);
    }).toPass();
}
