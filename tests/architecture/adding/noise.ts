import type { Copy } from "./copy.ts";

/** How loud a machine is, by a phone's sound meter: a tiny instrument, all of it. */
export function addNoise(copy: Copy): void {
  copy.write(
    "src/instruments/noise/index.ts",
    `import { checkRange, type LimitOf, type Verdict } from "../../measuring/index.ts";
import type { Instrument } from "../instrument.ts";
import type { NoiseReading } from "./reading.ts";

const limits = (of: LimitOf) => ({ loudest: of("noise-loudest") });
type Limits = ReturnType<typeof limits>;

export const noise: Instrument<NoiseReading, Limits, { verdict: Verdict | "deafening" }, { limits: Limits }> = {
  verdicts: ["passes", "fails", "unclear", "deafening"],
  limits,
  check: ({ decibels }) => checkRange(decibels, { min: 0, max: 200 }),
  assess: ({ decibels }, { loudest }) => ({
    verdict: decibels > 2 * loudest ? "deafening" : decibels > loudest ? "fails" : "passes",
  }),
  need: ({ of }) => ({ limits: limits(of) }),
  words: ({ decibels }, _, { texts, number, verdict }) =>
    texts("findings.noise", { value: number(decibels, 0), verdict }),
};
`,
  );
  copy.write(
    "src/instruments/noise/reading.ts",
    `import * as z from "zod/mini";
import { number } from "../shape-parts.ts";

export const shape = z.object({ kind: z.literal("noise"), decibels: number });
export type NoiseReading = z.infer<typeof shape>;
`,
  );
  copy.write(
    "src/instruments/noise/screen.tsx",
    `import type { ScreenProps } from "../../panel/frame/index.ts";
import { MeasureForm, useEntries } from "../../panel/screens/reading/index.ts";
import type { NeedOf } from "../index.ts";
import { noise } from "./index.ts";
import type { NoiseReading } from "./reading.ts";

export function Screen({ need, turn, actions, services, texts }: ScreenProps & { need: NeedOf<"noise"> }) {
  const { read, field } = useEntries<"decibels", NoiseReading>("decibels", { turn, services, texts });
  function send() {
    const typed = read("decibels");
    const reading = typed && { kind: "noise" as const, ...typed };
    if (reading && !noise.check(reading, need.limits, "")) actions.measure(turn.turn, reading);
  }
  return (
    <MeasureForm onSent={send} result={null} texts={texts}>
      {field("decibels", { label: texts("measure.decibels-label") })}
    </MeasureForm>
  );
}
`,
  );
  copy.addLine("src/instruments/index.ts", "const instruments = {", "  noise,");
  copy.addLine("src/instruments/index.ts", "import { ice }", 'import { noise } from "./noise/index.ts";');
  for (const [list, named] of [
    ["readings.ts", "shape"],
    ["screens.tsx", "Screen"],
  ] as const) {
    const door = list.replace("s.", ".");
    copy.addLine(`src/instruments/${list}`, "  ice,", "  noise,");
    copy.addLine(
      `src/instruments/${list}`,
      " as ice }",
      `import { ${named} as noise } from "./noise/${door}";`,
    );
  }
  copy.append(
    "flows/limits.yaml",
    '\nnoise-loudest: { value: 50, unit: dB, confidence: J, source: "Judgement, for a test" }\n',
  );
  copy.append("locales/en-GB/findings.yaml", '\nnoise: "{{value}} dB: {{verdict}}"\n');
  copy.append("locales/en-GB/measure.yaml", "\ndecibels-label: How loud is it?\ndecibels-empty: Type it.\n");
}

/** A check that takes such a reading, in one scenario. */
export function addNoiseCheck(copy: Copy): void {
  copy.write(
    "flows/checks/noise-level.yaml",
    `id: noise-level
station: cold
access: inside
minutes: 2
tools: []
start: read
turns:
  read:
    kind: reading
    instrument: noise
    verdicts:
      passes: { to: done, clears: [cold] }
      fails: { to: done, suspects: [cold] }
      unclear: { to: done }
      deafening: { to: professional, finds: not-covered }
outcomes:
  quiet: { from: [read.passes], says: { cooling-fault: seldom, otherwise: usually } }
  loud: { from: [read.fails, read.deafening], says: { cooling-fault: usually, otherwise: seldom } }
`,
  );
  copy.write(
    "locales/en-GB/checks/noise-level.yaml",
    `name: Noise
why: A machine that labours is loud.
read:
  ask: How loud is the machine?
  how: Hold the phone beside it.
  verdicts:
    passes: quiet
    fails: loud
    unclear: too close to call
    deafening: far too loud
`,
  );
  copy.addLine("flows/scenarios/too-warm.yaml", "checks:", "  - check: noise-level");
}
