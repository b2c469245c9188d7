import { createAdviser, type Subject } from "../../src/advice/index.ts";
import type { ChartContext } from "../../src/chart/index.ts";

/** Runs in the page: a first pass warms up the code, as the first taps of a session do; then each place is new. */
Object.assign(globalThis, {
  measureAdvice(subjects: Record<string, Subject>, places: [string, ChartContext][]) {
    const choose = () => {
      // The model of a scenario is made when it is entered, not with each choice.
      const advisers = new Map<string, ReturnType<typeof createAdviser>>();
      const adviserFor = ([scenario, memory]: [string, ChartContext]) => {
        const adviser = advisers.get(scenario) ?? createAdviser(subjects[scenario] as Subject, memory);
        advisers.set(scenario, adviser);
        return adviser;
      };
      return places.map((place) => {
        const adviser = adviserFor(place);
        return timeOf(() => adviser.advise(place[1]));
      });
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
