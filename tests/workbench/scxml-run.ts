import scxml from "scxml";
import type { Advice, ChartEvent } from "../../src/chart/index.ts";
import type { Limits } from "../../src/guide/index.ts";
import { placeOf, verdictOn } from "../../src/instruments/index.ts";

/** A run of an SCXML document in the independent interpreter. */
export type Run = { states(): string[]; send(event: ChartEvent, advice: Advice | null): void };

/** Compiles a document once; each call of what it returns starts a run of its own. */
export function openDocument(document: string, limits: Limits): () => Run {
  let model: unknown;
  scxml.documentStringToModel(null, document, (fault, compiled) => {
    if (fault) throw fault;
    model = compiled;
  });
  return () => {
    const chart = new scxml.scion.Statechart(model);
    chart.start();
    return {
      states: () => chart.getConfiguration(),
      send: (event, advice) =>
        void chart.gen({ name: event.type, data: { ...dataOf(event, limits), advice } }),
    };
  };
}

/** What an event carries into the document: verdicts are decided before they are sent. */
export function dataOf({ at, reading, code }: ChartEvent, limits: Limits): Record<string, unknown> {
  const measured = reading && {
    instrument: reading.kind,
    verdict: verdictOn(reading, limits, at),
    place: placeOf(reading.kind, reading as { place?: string }),
  };
  return { at, ...measured, ...(code === undefined ? {} : { code }) };
}
