// The library ships no types; this much of it is used here.
declare module "js-quantities" {
  class Qty {
    constructor(value: number, unit: string);
    readonly scalar: number;
    to(unit: string): Qty;
  }
  export default Qty;
}
