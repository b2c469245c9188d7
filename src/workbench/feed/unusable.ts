/** A feed that cannot be used at all. The message says what to do, and names no file. */
export class UnusableFeed extends Error {}
