import type { Page } from "@playwright/test";

/** Now by a page's clock, with the page's own offset (RFC 3339). */
export async function nowOn(page: Page): Promise<string> {
  const [instant, offset] = await page.evaluate(() => [Date.now(), -new Date().getTimezoneOffset()]);
  const sign = (offset as number) < 0 ? "-" : "+";
  const minutes = Math.abs(offset as number);
  const pad = (value: number) => `${value}`.padStart(2, "0");
  const local = new Date((instant as number) + (offset as number) * 60_000).toISOString().slice(0, -1);
  return `${local}${sign}${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
}
