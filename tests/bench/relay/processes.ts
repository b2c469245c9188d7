import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { type RelayProcess, startRelayProcess } from "../../cobrowse/relay-process.ts";
import type { Answer, Order } from "./crowd.ts";

/** What is measured: where rooms of three may meet, and what it has taken of a processor so far, in seconds. */
export type Measured = {
  name: string;
  at: "relay" | "floor";
  ports: number[];
  cpu(): Promise<number>;
  relays: RelayProcess[];
  end(): Promise<void>;
};

const script = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const start = (name: string) => fork(script(name), { execArgv: ["--import", "tsx"] });

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  child.disconnect();
  await once(child, "exit");
}

/** A bare broadcast in a process of its own. */
export async function startFloor(): Promise<Measured> {
  const child = start("floor.ts");
  const [{ port }] = await once(child, "message");
  return {
    name: "floor: a bare broadcast in memory",
    at: "floor",
    ports: [port],
    cpu: async () => {
      const answer = once(child, "message");
      child.send({});
      return (await answer)[0].cpu;
    },
    relays: [],
    end: () => end(child),
  };
}

/** So many relays on one store. */
export async function startRelays(name: string, store: string, count = 1): Promise<Measured> {
  const relays: RelayProcess[] = [];
  for (let nth = 0; nth < count; nth++) relays.push(await startRelayProcess(store));
  return {
    name,
    at: "relay",
    ports: relays.map(({ port }) => port),
    cpu: async () => {
      let sum = 0;
      for (const relay of relays) sum += (await relay.measure()).cpu_seconds ?? 0;
      return sum;
    },
    relays,
    end: async () => {
      for (const { child } of relays) {
        const ended = child.exitCode === null && child.signalCode === null && once(child, "exit");
        child.kill("SIGTERM");
        await ended;
      }
    },
  };
}

/** Processes with rooms, who all do the same. */
export type Crowd = { all(order: Order): Promise<Answer>; end(): Promise<void> };

/** @param count how many; rooms of an order are shared out among them */
export function startCrowd(count: number): Crowd {
  const children = Array.from({ length: count }, () => start("crowd.ts"));
  return {
    all: async (order) => {
      const answers = children.map(async (child, place): Promise<Answer> => {
        const rooms = order.do === "meet" ? Math.ceil(order.rooms / count) : 0;
        const own = order.do === "meet" ? { ...order, rooms, from: order.from + place * rooms } : order;
        const answered = once(child, "message");
        child.send(own);
        const [answer] = await Promise.race([
          answered,
          once(child, "exit").then(() => Promise.reject(new Error("A process of the load has ended"))),
        ]);
        return answer;
      });
      const all = await Promise.all(answers);
      return {
        sent: all.reduce((sum, { sent }) => sum + sent, 0),
        delays: all.flatMap(({ delays }) => delays),
      };
    },
    end: async () => {
      await Promise.all(children.map(end));
    },
  };
}
