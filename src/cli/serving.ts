import type { Server } from "node:http";
import type { AddressInfo } from "node:net";

/** The process that serves, as far as a command needs one. */
export type Serving = {
  print(line: string): void;
  /** Resolves when it is to stop. */
  untilStopped(): Promise<void>;
};

export const ownProcess: Serving = {
  print: console.log,
  untilStopped: () =>
    new Promise((stop) => {
      for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => stop());
    }),
};

/** A port as it was typed, 0 for any that is free; null for anything else. */
export function portIn(typed: string): number | null {
  const port = /^\d{1,5}$/.test(typed) ? Number(typed) : Number.NaN;
  return port < 65_536 ? port : null;
}

/**
 * Has a server listen until it is stopped.
 * @param says what is printed once it does, of the address it has
 * @throws Error where the port is taken
 */
export async function serveUntilStopped(
  server: Server,
  port: number,
  host: string,
  says: (address: string) => string,
  { print, untilStopped }: Serving,
): Promise<void> {
  await new Promise<void>((listening, failed) => {
    server.once("error", failed);
    server.listen(port, host, listening);
  });
  print(says(`http://${host}:${(server.address() as AddressInfo).port}/`));
  await untilStopped();
  server.close();
  server.closeAllConnections();
}
