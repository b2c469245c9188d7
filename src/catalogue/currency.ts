// ISO 4217, from memory. Not asked of Intl: some engines take a currency's smallest unit from what is in use, and
// a price that one engine wrote would be a hundred times too high in another.
const whole = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
const thousandths = "BHD IQD JOD KWD LYD OMR TND";

/** How many decimals the smallest unit of a currency has; 2 for all that are not known otherwise. */
export function minorDigits(currency: string): number {
  return whole.includes(currency) ? 0 : thousandths.includes(currency) ? 3 : 2;
}
