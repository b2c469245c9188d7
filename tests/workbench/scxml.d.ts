/** The little of the independent SCXML interpreter (npm `scxml`) that the tests use; it brings no types. */
declare module "scxml" {
  type Event = { name: string; data?: unknown };
  type Statechart = { start(): string[]; gen(event: Event): string[]; getConfiguration(): string[] };
  type Model = unknown;
  const scxml: {
    documentStringToModel(url: null, document: string, done: (fault: unknown, model: Model) => void): void;
    scion: { Statechart: new (model: Model) => Statechart };
  };
  export default scxml;
}
