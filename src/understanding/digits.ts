/*
 * Whole numbers from 0 as text of 64 signs: the first 32 end a number, the others go on with it. Text packs better in a
 * data file than bytes written as text do.
 */
const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZ012345abcdefghijklmnopqrstuvwxyz6789+/";
const values = new Map([...signs].map((sign, value) => [sign, value]));

/** Numbers as text. @example writeDigits([1, 33]) // "BbB" */
export function writeDigits(numbers: readonly number[]): string {
  return numbers
    .map((number) => {
      let text = signs[number % 32] ?? "";
      for (let rest = Math.floor(number / 32); rest > 0; rest = Math.floor(rest / 32))
        text = `${signs[32 + (rest % 32)]}${text}`;
      return text;
    })
    .join("");
}

/** The numbers that {@link writeDigits} wrote; a sign that is none of its own ends the reading. */
export function readDigits(text: string): number[] {
  const numbers: number[] = [];
  let begun = 0;
  for (const sign of text) {
    const value = values.get(sign);
    if (value === undefined) break;
    begun = begun * 32 + (value % 32);
    if (value < 32) {
      numbers.push(begun);
      begun = 0;
    }
  }
  return numbers;
}
