import fc from "fast-check";

/** What turns up where something else should be: of every JSON kind, and what only just is no number, text or date. */
const oddity = fc.oneof(
  fc.constantFrom<unknown>(
    "",
    " ",
    "x".repeat(81),
    "😀".repeat(80),
    "date",
    "flow",
    "answered",
    "no-such-word",
  ),
  fc.constantFrom<unknown>("2026-11-25T10:00:00+01:00", "2026-11-25T99:00:00Z", "2026-11-25"),
  fc.constantFrom<unknown>(0, -0, -1, 1.5, 2 ** 53, -(2 ** 53), Number.NaN, Number.POSITIVE_INFINITY),
  fc.constantFrom<unknown>(null, undefined, true, [], {}, [null], { kind: "flow" }, { type: "answered" }),
  fc.jsonValue(),
);
// As JSON writes it: an own key, and not what every object has.
const key = fc.constantFrom("__proto__", "constructor", "at", "turn", "kind", "fits", "extra", "0");

/**
 * Copies of a value with one place in it spoilt: replaced, left out or added to, now and then at the very top.
 * @param depth how far down the place may be
 */
export function spoiltFrom<T>(samples: readonly T[], depth = 9): fc.Arbitrary<unknown> {
  const way = fc.array(fc.nat(0xffff), { minLength: 1, maxLength: depth });
  return fc
    .record({ sample: fc.constantFrom(...samples), way, oddity, key, manner: fc.nat(5) })
    .map(({ sample, way, oddity, key, manner }) => {
      const whole = { value: JSON.parse(JSON.stringify(sample)) as unknown };
      let [holder, place]: [object, string] = [whole, "value"];
      for (const step of way.slice(1)) {
        const inner = (holder as Record<string, unknown>)[place];
        if (typeof inner !== "object" || inner === null || Object.keys(inner).length === 0) break;
        [holder, place] = [inner, Object.keys(inner)[step % Object.keys(inner).length] as string];
      }
      if (manner === 0 && holder !== whole) Reflect.deleteProperty(holder, place);
      else if (manner === 1 && !Array.isArray(holder))
        Object.defineProperty(holder, key, { value: oddity, ...asWritten });
      else if (manner > 1) Object.defineProperty(holder, place, { value: oddity, ...asWritten });
      return whole.value;
    });
}

const asWritten = { enumerable: true, configurable: true, writable: true };
