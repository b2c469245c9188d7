/**
 * Whether two different texts are one slip apart: one character other, missing or too much, or two neighbours
 * swapped. Takes time linear in their length, so that a phone can hold a code against hundreds of others.
 */
export function isOneSlip(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  const surplus = long.length - short.length;
  if (surplus > 1 || short === long) return false;
  let start = 0;
  while (start < short.length && short[start] === long[start]) start++;
  let end = 0;
  while (end < short.length - start && short[short.length - 1 - end] === long[long.length - 1 - end]) end++;
  const differing = long.length - start - end;
  if (differing === 1) return true;
  return (
    surplus === 0 && differing === 2 && short[start] === long[start + 1] && short[start + 1] === long[start]
  );
}
