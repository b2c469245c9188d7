import { chromium } from "playwright";
import { type Advisers, createAdviser } from "../../src/advice/index.ts";
import type { ChartContext } from "../../src/chart/index.ts";
import { compileFlow, compileGuide } from "../../src/compile/index.ts";
import { metaOf, type Session, startSession } from "../../src/session/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { sound } from "../compile/scenario-paths.ts";
import { answerTo, at, take } from "../session/drive.ts";
import { buildScript } from "./build-script.ts";
import { chromiumSwitches } from "./chromium-switches.ts";

/** How much slower than this machine a phone is taken to be. */
const slowdown = 4;
const runs = 5;

/** A place where the next check is chosen. */
type Place = [scenario: string, memory: ChartContext];

/** What the page measures, in ms: one advice at each place, and one pass of the floor at each. */
type Measured = { advice: number[]; floor: number[] };

type InPage = { measureAdvice: (...given: [unknown, unknown]) => Measured };

/** How long the choice of the next check takes on a slow phone, beside a copy of the same memory as the floor. */
export async function benchAdvice(executablePath: string): Promise<void> {
  const flow = readFlow();
  const places = placesOf(flow);
  const subjects = Object.fromEntries(compileFlow(flow).scenarios.map((one) => [one.id, one]));
  const script = await buildScript(new URL("advice-page.ts", import.meta.url));
  const browser = await chromium.launch({ executablePath, args: chromiumSwitches });
  const all: Measured = { advice: [], floor: [] };
  try {
    for (let run = 0; run < runs; run++) {
      const page = await browser.newPage();
      const client = await page.context().newCDPSession(page);
      await client.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
      await page.addScriptTag({ content: script });
      const measured = await page.evaluate(
        (given) =>
          (globalThis as never as InPage).measureAdvice(...(JSON.parse(given) as [unknown, unknown])),
        JSON.stringify([subjects, places]),
      );
      // The quickest of the runs at each place: what else the machine did meanwhile is none of the choice's time.
      for (const name of ["advice", "floor"] as const)
        all[name] = measured[name].map((time, at) => Math.min(time, all[name][at] ?? time));
      await page.close();
    }
  } finally {
    await browser.close();
  }
  const rank = (values: number[], share: number) =>
    [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) * share)] ?? 0;
  const row = (name: string, values: number[]) =>
    `${name.padEnd(34)}${[0.5, 0.99, 1].map((share) => rank(values, share).toFixed(2).padStart(9)).join("")}`;
  console.log(
    `The next check, chosen at ${places.length} places of ${Object.keys(flow.scenarios).length} scenarios, the quickest of ${runs} runs;`,
  );
  console.log(`Chromium ${browser.version()}, slowed down ${slowdown} times; ms.\n`);
  console.log(`${"".padEnd(34)}${["median", "p99", "worst"].map((word) => word.padStart(9)).join("")}`);
  console.log(row("choice of the next check", all.advice));
  console.log(row("floor: the memory copied as JSON", all.floor));
  const ratio = rank(all.advice, 0.5) / rank(all.floor, 0.5);
  console.log(`\nA choice takes as long as ${ratio.toFixed(0)} copies of what it reads (medians).`);
  const met = rank(all.advice, 0.99) <= 5;
  console.log(`Goal  ${met ? "pass" : "MISS"}  99 of 100 choices within 5 ms`);
}

/** The places of a session without a find, in every scenario: the longest there are. */
function placesOf(flow: ReturnType<typeof readFlow>): Place[] {
  const places: Place[] = [];
  const noting: Advisers = (subject, opening) => {
    const adviser = createAdviser(subject, opening);
    const { id } = subject as unknown as { id: string };
    return {
      ...adviser,
      advising(memory) {
        places.push([id, memory]);
        return adviser.advising(memory);
      },
    };
  };
  const guide = compileGuide(flow, noting);
  for (const scenario of guide.scenarios) {
    let session = openingOf(startSession(guide, at(0)), scenario);
    while (metaOf(session).kind !== "ending" && metaOf(session).kind !== "model") {
      const { turn, kind } = metaOf(session);
      const answer = sound[turn] ?? (kind === "gate" ? "ready" : "cannot");
      session = take(session, session.snapshot.can(answerAs(session, answer)) ? answer : "cannot");
    }
  }
  return places;
}

const answerAs = (session: Session, answer: (typeof sound)[string]) =>
  typeof answer === "string"
    ? ({ type: `answered.${answer}`, at: at(0) } as never)
    : ({ ...answerTo(session, answer, at(0)) } as never);

/** The shortest way through the opening into a scenario. */
function openingOf(first: Session, scenario: string): Session {
  const open = [first];
  for (const session of open) {
    if (Object.hasOwn(Object(session.snapshot.value), scenario)) return session;
    const { turn, answers = [] } = metaOf(session);
    if (turn.startsWith("opening.")) for (const answer of answers) open.push(take(session, answer));
  }
  throw new Error(`Nothing in the opening leads to "${scenario}"`);
}
