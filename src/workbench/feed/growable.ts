const BLOCK = 2 ** 18;

/**
 * A list of numbers from 0 to 2³²−1 at four bytes each, which grows by blocks, so that nothing is ever copied. What was
 * never put is 0, and costs nothing where a whole block is.
 */
export type Growable = {
  readonly length: number;
  push(value: number): void;
  put(index: number, value: number): void;
  at(index: number): number;
  clear(): void;
};

export function createGrowable(): Growable {
  let blocks: (Uint32Array | undefined)[] = [];
  let length = 0;
  function put(index: number, value: number): void {
    const block = Math.floor(index / BLOCK);
    let numbers = blocks[block];
    if (!numbers) {
      numbers = new Uint32Array(BLOCK);
      blocks[block] = numbers;
    }
    numbers[index % BLOCK] = value;
    length = Math.max(length, index + 1);
  }
  return {
    get length() {
      return length;
    },
    push: (value) => put(length, value),
    put,
    at: (index) => blocks[Math.floor(index / BLOCK)]?.[index % BLOCK] ?? 0,
    clear() {
      blocks = [];
      length = 0;
    },
  };
}
