/** A price in the smallest unit of its currency, or what to write instead. */
export type ReadPrice = { minor: number } | { fault: string };

/**
 * Reads a price with a decimal dot or comma. What may be read in two ways is refused: `1.299` for pounds may be one or
 * a thousand, and a shop would have to send the part for what stands there.
 * @param digits decimals of the currency
 */
export function readPrice(written: string, digits: number): ReadPrice {
  const [, whole, decimals = ""] = /^(\d+)(?:[.,](\d+))?$/.exec(written.trim()) ?? [];
  if (whole === undefined)
    return refuse(digits, "A price is a number without a currency sign or marks between thousands.");
  const isThousand = decimals.length === 3 && digits !== 3;
  if (isThousand || (decimals.length > digits && /[1-9]/.test(decimals.slice(digits))))
    return refuse(
      digits,
      isThousand ? "This price may be read in two ways." : "This price has too many decimals.",
    );
  const minor = Number(whole + decimals.slice(0, digits).padEnd(digits, "0"));
  return Number.isSafeInteger(minor) ? { minor } : refuse(digits, "This price is too high.");
}

function refuse(digits: number, why: string): ReadPrice {
  const zeros = "0".repeat(digits);
  return { fault: `${why} Write it as ${digits > 0 ? `1299.${zeros} or 1299,${zeros}` : "1299"}.` };
}
