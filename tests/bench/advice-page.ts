import { createAdviser } from "../../src/advice/index.ts";
import type { ChartContext } from "../../src/chart/index.ts";
import type { Flow } from "../../src/guide/index.ts";

/** Runs in the page: a first pass warms up the code, as the first taps of a session do; then each place is new. */
Object.assign(globalThis, {
  measureAdvice(flow: Flow, places: [string, ChartContext][]) {
    const choose = () => {
      const adviser = createAdviser(flow);
      // The model of a scenario is made with its chart, not with each choice.
      for (const [scenario, memory] of places) adviser.explain(scenario, memory, "");
      return places.map(([scenario, memory]) => timeOf(() => adviser.advise(scenario, memory)));
    };
    choose();
    const floor = places.map(([, memory]) => timeOf(() => copyOften(memory)) / copies);
    return { advice: choose(), floor };
  },
});

/** The clock of a browser is too coarse for one. */
const copies = 100;

function copyOften(memory: ChartContext): void {
  for (let copy = 0; copy < copies; copy++) JSON.parse(JSON.stringify(memory));
}

function timeOf(work: () => unknown): number {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}
