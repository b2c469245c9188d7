import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright";

/** What the script in-page.js gathers. */
export type InPage = {
  headings: { at: number; text: string; sinceTap: number | null }[];
  longTasks: { at: number; ms: number }[];
  shifts: { at: number; by: number }[];
  firstTap: number | null;
  /** Told when the next heading has been drawn. */
  next: (() => void) | null;
};

/** One visit as it was measured; times in milliseconds since the page was asked for. */
export type Visit = {
  firstQuestion: number;
  /** From a tap made as soon as the first question stood there: the rest of the script may still be on its way. */
  firstTap: number;
  /** From each later tap to the frame after the next question. */
  taps: number[];
  /** Tasks over 50 ms that began after the first question. */
  longTasks: number[];
  /** Layout shift without input, as browsers count it: up to the first tap, and in all. */
  shift: { loading: number; all: number };
  /** Addresses without their origin, in the order in which they had arrived, and whether before the first question. */
  arrived: { name: string; bytes: number; early: boolean }[];
  /** The drawings that the visitor's turns have, by their ids; others come ahead, in idle time. */
  drawings?: string[];
};

/** A mid-range phone on a poor connection, as Lighthouse has them for its mobile runs. */
export const device = {
  width: 360,
  height: 740,
  cpuSlowDown: 4,
  roundTripMs: 150,
  downKbps: 1600,
  upKbps: 750,
};

/** Opens `address` with nothing stored, lets `walk` tap its way, and reads what was measured. */
export async function visit(
  browser: Browser,
  address: string,
  walk: (page: Page, settled: Promise<unknown>) => Promise<void>,
): Promise<Visit> {
  const { width, height, cpuSlowDown, roundTripMs, downKbps, upKbps } = device;
  const context = await browser.newContext({ viewport: { width, height }, hasTouch: true, isMobile: true });
  try {
    const page = await context.newPage();
    const faults: string[] = [];
    page.on("pageerror", (error) => faults.push(error.message));
    const link = await context.newCDPSession(page);
    const arrivals = await watchArrivals(link);
    await link.send("Network.emulateNetworkConditions", {
      offline: false,
      latency: roundTripMs,
      downloadThroughput: (downKbps * 1000) / 8,
      uploadThroughput: (upKbps * 1000) / 8,
    });
    await link.send("Emulation.setCPUThrottlingRate", { rate: cpuSlowDown });
    await page.addInitScript({ path: fileURLToPath(new URL("in-page.js", import.meta.url)) });
    await page.goto(address, { waitUntil: "commit" });
    await page.getByRole("heading", { level: 2 }).waitFor();
    await walk(page, page.waitForLoadState("networkidle"));
    if (faults.length > 0) throw new Error(faults.join("\n"));
    const seen = (await page.evaluate("window.fridgesideBench")) as InPage;
    const [first, second, ...later] = seen.headings;
    if (!first || !second) throw new Error(`Too few questions were seen at ${address}`);
    return {
      firstQuestion: first.at,
      firstTap: second.sinceTap ?? Number.NaN,
      taps: later.map(({ sinceTap }) => sinceTap ?? Number.NaN),
      longTasks: seen.longTasks.flatMap(({ at, ms }) => (at < first.at ? [] : [ms])),
      shift: {
        loading: sumOf(seen.shifts.filter(({ at }) => at < (seen.firstTap ?? Number.POSITIVE_INFINITY))),
        all: sumOf(seen.shifts),
      },
      arrived: arrivals(first.at),
    };
  } finally {
    await context.close();
  }
}

const sumOf = (shifts: InPage["shifts"]) => shifts.reduce((sum, { by }) => sum + by, 0);

type Link = Awaited<ReturnType<import("playwright").BrowserContext["newCDPSession"]>>;

/** Notes every file that arrives, with the bytes that truly travelled (headers among them). */
async function watchArrivals(link: Link): Promise<(firstQuestion: number) => Visit["arrived"]> {
  const names = new Map<string, string>();
  const arrived: { name: string; bytes: number; at: number }[] = [];
  let began = Number.NaN;
  link.on("Network.requestWillBeSent", ({ requestId, request, timestamp, type }) => {
    if (type === "Document") began = timestamp;
    names.set(requestId, new URL(request.url).pathname.slice(1));
  });
  link.on("Network.loadingFinished", ({ requestId, timestamp, encodedDataLength }) => {
    const name = names.get(requestId);
    if (name) arrived.push({ name, bytes: encodedDataLength, at: (timestamp - began) * 1000 });
  });
  await link.send("Network.enable");
  return (firstQuestion) =>
    arrived.map(({ name, bytes, at }) => ({ name, bytes, early: at < firstQuestion }));
}
