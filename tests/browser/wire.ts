import { connect, createServer, type Server, type Socket } from "node:net";

/** A wire between a page and a relay that a test cuts and mends. */
export type Wire = { port: number; cut(): void; mend(): void; close(): Promise<void> };

/** @param to the relay's port on this machine */
export async function createWire(to: number): Promise<Wire> {
  const ends = new Set<Socket>();
  let isCut = false;
  const server: Server = createServer((near) => {
    if (isCut) return void near.destroy();
    const far = connect(to, "127.0.0.1");
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      ends.add(one);
      one.on("error", () => {});
      one.on("close", () => {
        ends.delete(one);
        other.destroy();
      });
      one.pipe(other);
    }
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const address = server.address();
  const hangUp = () => {
    for (const end of ends) end.destroy();
  };
  return {
    port: typeof address === "object" && address ? address.port : 0,
    cut() {
      isCut = true;
      hangUp();
    },
    mend() {
      isCut = false;
    },
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        hangUp();
      }),
  };
}
