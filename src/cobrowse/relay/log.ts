import { type DestinationStream, type Logger, pino } from "pino";

/** A log of what the relay does, a JSON object a line, and of nothing that anybody typed: not even their address. */
export function createLog(out: DestinationStream, level = "info"): Logger {
  return pino({ level, base: null, timestamp: pino.stdTimeFunctions.isoTime }, out);
}
