import { execFileSync } from "node:child_process";
import { cpSync } from "node:fs";
import { join } from "node:path";
import { Window } from "happy-dom";
import { h, render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, expect, test, vi } from "vitest";
import { createPanelData, readFlow } from "../../src/workbench/build/index.ts";
import { createDraftOf } from "../panel/gallery/draft.ts";
import { at } from "../session/drive.ts";
import { readerOf } from "../turn/reader.ts";
import { type Copy, createCopy } from "./adding/copy.ts";
import { addNoise, addNoiseCheck } from "./adding/noise.ts";

/*
 * What it takes to add something, tried on a copy of the project: the copy has to work, and the files that had to be
 * touched are counted.
 */
let copy: Copy;
afterEach(() => {
  copy.remove();
  vi.unstubAllGlobals();
});

/** A module of the copy, and not of the project. */
const own = <Module>(path: string): Promise<Module> => import(/* @vite-ignore */ join(copy.path, path));

test("an instrument is a folder, a line in each list of instruments, its limits and its texts", async () => {
  copy = createCopy("src", "flows", "locales");
  addNoise(copy);
  expect(copy.touched()).toEqual([
    "flows/limits.yaml",
    "locales/en-GB/findings.yaml",
    "locales/en-GB/measure.yaml",
    "src/instruments/index.ts",
    "src/instruments/noise/index.ts",
    "src/instruments/noise/reading.ts",
    "src/instruments/noise/screen.tsx",
    "src/instruments/readings.ts",
    "src/instruments/screens.tsx",
  ]);
  addNoiseCheck(copy);

  // The lists are complete, and everybody who knows an instrument by its kind knows this one.
  copy.write(
    "tsconfig.json",
    JSON.stringify({
      extends: "../../tsconfig.json",
      include: ["src/instruments", "src/embed/virtual.d.ts"],
    }),
  );
  execFileSync(process.execPath, [join(copy.path, "../../node_modules/typescript/bin/tsc"), "-p", copy.path]);

  const [build, verify, session, compile, advice, turn, screens] = await Promise.all([
    own<typeof import("../../src/workbench/build/index.ts")>("src/workbench/build/index.ts"),
    own<typeof import("../../src/workbench/verify/index.ts")>("src/workbench/verify/index.ts"),
    own<typeof import("../../src/session/index.ts")>("src/session/index.ts"),
    own<typeof import("../../src/compile/index.ts")>("src/compile/index.ts"),
    own<typeof import("../../src/advice/index.ts")>("src/advice/index.ts"),
    own<typeof import("../../src/turn/index.ts")>("src/turn/index.ts"),
    own<typeof import("../../src/instruments/screens.tsx")>("src/instruments/screens.tsx"),
  ]);
  const flow = build.readFlow();
  const locales = build.readYamlFiles(build.ownLocales);
  const flows = build.readYamlFiles(build.ownFlows);
  expect(verify.verifyFolder({ flows, locales, read: build.readSource })).toEqual([]);

  const texts = turn.createTexts(build.readLocales(), "en-GB", readerOf(flow));
  const guide = compile.compileGuide(flow, advice.createListAdviser);
  let now = session.startSession(guide, at(0));
  const take = (event: object) => {
    const given = session.parseEvent({ ...event, turn: session.metaOf(now).turn, at: at(1) });
    if (!given) throw new Error("No event");
    const next = session.record(now, given);
    expect(next.refusal ?? null).toBeNull();
    now = next.session;
  };
  for (const answer of ["none", "too-warm", "nothing", "both"]) take({ type: "answered", answer });
  const shown = turn.turnOf(now, texts, at(1));
  expect(shown.reading).toMatchObject({ instrument: "noise", limits: { loudest: 50 } });

  const page = new Window();
  vi.stubGlobal("document", page.document);
  const root = page.document.body as unknown as HTMLElement;
  const measure = vi.fn();
  const given = {
    turn: shown,
    texts,
    actions: { measure },
    services: { draft: createDraftOf() },
    busy: false,
    picture: () => null,
  };
  await act(() => render(h(screens.ReadingScreen, given as never), root));
  const input = root.querySelector("input") as HTMLInputElement;
  input.value = "70";
  await act(() => void input.dispatchEvent(new page.Event("input", { bubbles: true }) as unknown as Event));
  await act(() => root.querySelector("button")?.click());
  expect(measure).toHaveBeenCalledWith("noise-level.read", { kind: "noise", decibels: 70 });

  take({ type: "measured", reading: measure.mock.calls[0]?.[1] });
  expect(turn.linesOf(now, texts).at(-1)?.answer).toBe("70 dB: loud");
  const journal = session.journalOf(now.log);
  expect(session.parseJournal(JSON.parse(JSON.stringify(journal)))?.entries).toHaveLength(5);
});

test("a check is a file, a file of texts, and a line in a scenario", () => {
  copy = createCopy("flows", "locales");
  copy.write(
    "flows/checks/fan-hum.yaml",
    `id: fan-hum
station: cold
access: inside
minutes: 1
tools: []
start: listen
turns:
  listen:
    answers:
      hums: { to: done, clears: [cold] }
      silent: { to: done, suspects: [cold] }
outcomes:
  silent: { from: [listen.silent], says: { fan-fault: usually, otherwise: seldom } }
  hums: { from: [listen.hums], says: { fan-fault: seldom, otherwise: usually } }
`,
  );
  copy.write(
    "locales/en-GB/checks/fan-hum.yaml",
    `name: Fan
why: A fan that runs can be heard.
listen:
  ask: Does the fan hum?
  how: Put your ear to the back.
  answers: { hums: It hums, silent: It is silent }
`,
  );
  copy.addLine("flows/scenarios/too-warm.yaml", "checks:", "  - check: fan-hum");
  expect(copy.verify()).toEqual([]);
  expect(copy.touched()).toHaveLength(3);
});

test("a scenario is a file, and an answer of the opening with its text", () => {
  copy = createCopy("flows", "locales");
  copy.write(
    "flows/scenarios/squeaks.yaml",
    `id: squeaks
when: { answered: { turn: opening.symptom, is: [squeaks] } }
complaint: too-warm
proofs: []
checks:
  - check: door-openings
  - check: condenser
otherwise: { to: professional, who: shop }
`,
  );
  copy.addLine("flows/opening.yaml", "after-change: { to: supply }", "      squeaks: { to: done }");
  const text = "    after-change: It's new";
  copy.addLine("locales/en-GB/checks/opening.yaml", text, "    squeaks: It squeaks");
  expect(copy.verify()).toEqual([]);
  expect(copy.touched()).toHaveLength(3);
});

test("a language is a folder and a word in its region, and says what it lacks", async () => {
  copy = createCopy("flows", "locales");
  cpSync(join(copy.path, "locales/en-GB"), join(copy.path, "locales/cy"), { recursive: true });
  copy.append("locales/cy/tools.yaml", "");
  expect(copy.verify().map(({ message }) => message)).toEqual([
    'No region is the default for "cy". Name the language at "default-for" where most of its readers live.',
  ]);
  copy.replace("flows/regions/GB.yaml", "default-for: [en]", "default-for: [en, cy]");
  expect(copy.verify()).toEqual([]);
  expect(copy.touched()).toEqual(["flows/regions/GB.yaml", "locales/cy/tools.yaml"]);
  copy.write("locales/cy/tools.yaml", "{}\n");
  const lacking = copy.verify();
  expect(lacking.length).toBeGreaterThan(5);
  for (const { message } of lacking) expect(message).toContain("cy");
});

test("a region is a file, and its readers measure in its units", () => {
  copy = createCopy("flows", "locales");
  copy.write(
    "flows/regions/AU.yaml",
    `units:
  volume: [ml, g]
  fill: [l, ml]
  mass: [g, kg]
  pressure: [kPa]
  temperature: [C]
date-order: day month year
statutes: {}
`,
  );
  expect(copy.verify()).toEqual([]);
  expect(copy.touched()).toEqual(["flows/regions/AU.yaml"]);
  const data = createPanelData(readFlow(join(copy.path, "flows")), { "en-GB": {}, "en-AU": {} });
  expect(data["en-AU"]?.start.flow.region.units.pressure).toEqual(["kPa"]);
  expect(data["en-GB"]?.start.flow.region.units.pressure).toEqual(["bar", "kPa", "psi"]);
});
