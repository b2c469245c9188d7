import { readFileSync, writeFileSync } from "node:fs";
import { chromium } from "playwright";
import { compileGuide } from "../../src/compile/index.ts";
import { createTexts } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { readerOf } from "../turn/reader.ts";
import { buildOurs } from "./built.ts";
import { chromiumSwitches } from "./chromium-switches.ts";
import { pages } from "./pages.ts";
import { serveFiles } from "./serve.ts";
import { visit } from "./visit.ts";
import { createVisitor } from "./visitor.ts";
import { wornFilter } from "./worn-filter.ts";

const ours = await buildOurs();
const extra = Object.entries(pages).map(([n, t]) => [n, Buffer.from(t)] as [string, Buffer]);
const files = new Map([
  ...ours,
  ...extra,
  ["catalogue.json", readFileSync(new URL("../../demo/catalogue.json", import.meta.url))] as [string, Buffer],
]);
const { address, close } = await serveFiles(files as never);
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: chromiumSwitches });
const flow = readFlow();
const texts = createTexts(readLocales(), "en-GB", readerOf(flow));
let profile: any;
const events: any[] = [];
const v = await visit(browser, `${address}ours.html`, async (page, settled) => {
  const visitor = createVisitor(page, compileGuide(flow), texts, wornFilter.answers, wornFilter.model);
  await visitor.go();
  await settled;
  await page.waitForTimeout(3000);
  const link = await page.context().newCDPSession(page);
  await link.send("Profiler.enable");
  await link.send("Profiler.setSamplingInterval", { interval: 500 });
  await link.send("Profiler.start");
  link.on("Tracing.dataCollected", ({ value }: any) => events.push(...value));
  await link
    .send("Tracing.start", {
      transferMode: "ReportEvents",
      traceConfig: { includedCategories: ["devtools.timeline", "toplevel", "blink.user_timing"] },
    } as never)
    .catch((e) => console.log(String(e)));
  while (visitor.turn().kind !== "ending") await visitor.go();
  profile = (await link.send("Profiler.stop")).profile;
  const done = new Promise((r) => link.once("Tracing.tracingComplete", r));
  await link.send("Tracing.end").catch(() => {});
  await Promise.race([done, new Promise((r) => setTimeout(r, 5000))]);
});
console.log("taps", v.taps.map(Math.round).join(" "), "long", v.longTasks.map(Math.round).join(" "));
const self = new Map<string, number>();
const total = new Map<string, number>();
const byId = new Map(profile.nodes.map((n: any) => [n.id, n]));
const parent = new Map<number, number>();
for (const n of profile.nodes) for (const c of n.children ?? []) parent.set(c, n.id);
profile.samples.forEach((id: number, i: number) => {
  const dt = profile.timeDeltas[i] / 1000;
  const n: any = byId.get(id);
  const name = (m: any) => {
    const u = m.callFrame.url.split("/").pop();
    const k = [...files.keys()].find((x) => u && x.endsWith(u));
    const src = k ? ((files.get(k) as Buffer).toString().split("\n")[m.callFrame.lineNumber] ?? "") : "";
    return `${m.callFrame.functionName || "(anon)"} ${u.slice(0, 14)} ${src.slice(m.callFrame.columnNumber, m.callFrame.columnNumber + 110).replace(/\s+/g, " ")}`;
  };
  self.set(name(n), (self.get(name(n)) ?? 0) + dt);
  const seen = new Set<string>();
  for (let p: any = n; p; p = byId.get(parent.get(p.id) as number)) {
    if (seen.has(name(p))) continue;
    seen.add(name(p));
    total.set(name(p), (total.get(name(p)) ?? 0) + dt);
  }
});
const top = (m: Map<string, number>, k: number) =>
  [...m]
    .filter(([n]) => !/^\((idle|root|program)/.test(n))
    .sort((a, b) => b[1] - a[1])
    .slice(0, k)
    .map(([n, t]) => `${t.toFixed(0)} ms  ${n}`)
    .join("\n");
console.log("SELF\n" + top(self, 45));
console.log("TOTAL\n" + top(total, 70));
const byName = new Map<string, [number, number]>();
for (const e of events)
  if (e.ph === "X") {
    const x = byName.get(e.name) ?? [0, 0];
    byName.set(e.name, [x[0] + (e.tdur ?? e.dur ?? 0) / 1000, x[1] + 1]);
  }
console.log(
  "TRACE\n" +
    [...byName]
      .sort((a, b) => b[1][0] - a[1][0])
      .slice(0, 25)
      .map(([n, [t, c]]) => `${t.toFixed(0)} ms x${c} ${n}`)
      .join("\n"),
);
writeFileSync("/tmp/w/trace.json", JSON.stringify(events));
await browser.close();
close();
