import type { Page, Route } from "@playwright/test";

/** What can come in place of a file that was built. */
export const faults = ["slow", "404", "500", "cut", "other", "html"] as const;
export type Fault = (typeof faults)[number];

/** A file that is fetched after the first; `other` is a whole file of its kind that is not the one. */
export type LaterFile = { name: string; route: string; page: string; other: string; type: string };

export const laterFiles: LaterFile[] = [
  {
    name: "the engine",
    route: "**/parts/engine-*",
    page: "ways/one.html",
    other: "export const version = 0;",
    type: "text/javascript",
  },
  {
    name: "the texts and the flow",
    route: "**/parts/en-GB-*",
    page: "ways/one.html",
    other: '{"format":2}',
    type: "application/json",
  },
  {
    name: "the rules of style",
    route: "**/parts/later-*.css",
    page: "ways/one.html",
    other: "p{color:red}",
    type: "text/css",
  },
  {
    name: "the catalogue",
    route: "**/catalogue.json",
    page: "ways/one.html",
    other: '{"models":7}',
    type: "application/json",
  },
  {
    name: "the list of a catalogue's many files",
    route: "**/shards/catalogue.json",
    page: "large.html",
    other: '{"format":99}',
    type: "application/json",
  },
];

/** Makes a file come with a fault until `mend` is called; a slow one then comes. */
export async function spoil(page: Page, file: LaterFile, fault: Fault): Promise<{ mend(): Promise<void> }> {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  const come: Record<Fault, (route: Route) => Promise<void>> = {
    slow: async (route) => {
      await held;
      await route.continue();
    },
    404: (route) => route.fulfill({ status: 404, body: "Not found" }),
    500: (route) => route.fulfill({ status: 500, body: "Try again later" }),
    cut: async (route) => {
      const body = await (await route.fetch()).text();
      await route.fulfill({ contentType: file.type, body: body.slice(0, body.length / 2) });
    },
    other: (route) => route.fulfill({ contentType: file.type, body: file.other }),
    html: (route) =>
      route.fulfill({ contentType: "text/html", body: "<!doctype html><title>Not here</title>" }),
  };
  // A page that is left drops what it asked for.
  const handler = (route: Route) => come[fault](route).catch(() => {});
  await page.route(file.route, handler);
  return {
    mend: async () => {
      release();
      await page.unroute(file.route, handler);
    },
  };
}
