import type { FromRelay, Why } from "../protocol/index.ts";

/** A connection, whatever carries it. */
export type Line = {
  send(text: string): void;
  /** Bytes that were sent and have not left yet. */
  unread(): number;
  /** Ends it after all that was sent has left. */
  close(code: number, why: string): void;
  /** Ends it now. */
  cut(): void;
};

/** Close codes of RFC 6455, and of our own from 4000 on. */
export const closeCodes = { mistake: 1008, moving: 1012, over: 4000, replaced: 4001, later: 4002 } as const;

const codeOf: Partial<Record<Why, number>> = {
  replaced: closeCodes.replaced,
  ended: closeCodes.over,
  gone: closeCodes.over,
  unknown: closeCodes.over,
  "too-often": closeCodes.later,
  locked: closeCodes.later,
  busy: closeCodes.later,
  full: closeCodes.later,
};

/** Sends one message. */
export function tell(line: Line, message: FromRelay): void {
  line.send(JSON.stringify(message));
}

/** Says why, and ends the connection. */
export function hangUp(line: Line, why: Why, wait?: number): void {
  tell(line, { type: "no", why, ...(wait !== undefined && { wait }) });
  line.close(codeOf[why] ?? closeCodes.mistake, why);
}
