/** A shop's feed of any size, all of our own invention: makers, codes, parts, prices. */
export { createChance, pick } from "./chance.ts";
export { columns } from "./columns.ts";
export { demoFeedCommand, readMinutes } from "./command.ts";
export { createDemoFeed, type DemoFeed, demoCodes } from "./feed.ts";
