// ISO 4217, list one of 2024-06-25, as in the npm package currency-codes. Not asked of Intl: some engines take what is
// in use for a currency's smallest unit, and a price that one engine wrote would be a hundred times too high in another.
const whole = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
const thousandths = "BHD IQD JOD KWD LYD OMR TND";
const tenThousandths = "CLF UYW";

/** How many decimals the smallest unit of a currency has; 2 for a code that is none of ISO 4217's. */
export function minorDigits(currency: string): number {
  if (whole.includes(currency)) return 0;
  if (thousandths.includes(currency)) return 3;
  return tenThousandths.includes(currency) ? 4 : 2;
}
