import { comeBack, type Member, meetAtFloor, meetAtRelay } from "./member.ts";

/*
 * A process with rooms of three who talk: the load, apart from what is measured. It does what its parent says, one
 * thing at a time, and answers each with what came of it.
 */
export type Order =
  | { do: "meet"; at: "relay" | "floor"; ports: number[]; rooms: number; from: number }
  | { do: "talk"; seconds: number; perSecond: number }
  | { do: "come-back"; port: number; lacking: number }
  | { do: "leave" };
export type Answer = { sent: number; delays: number[] };

let rooms: Member[][] = [];

async function meet({ at, ports, rooms: count, from }: Order & { do: "meet" }): Promise<void> {
  const meetOne = at === "relay" ? meetAtRelay : meetAtFloor;
  for (let nth = 0; nth < count; nth += 10)
    rooms.push(
      ...(await Promise.all(
        Array.from({ length: Math.min(10, count - nth) }, (_, place) => meetOne(ports, from + nth + place)),
      )),
    );
}

/** Everybody says something so many times a second, each in a beat of their own. */
async function talk({ seconds, perSecond }: Order & { do: "talk" }): Promise<Answer> {
  const members = rooms.flat();
  const before = members.reduce((sum, { sent }) => sum + sent, 0);
  for (const member of members) member.delays = [];
  const start = performance.now();
  const said = members.map(() => 0);
  await new Promise<void>((done) => {
    const timer = setInterval(() => {
      const passed = performance.now() - start;
      for (const [place, member] of members.entries()) {
        const due = (passed / 1000) * perSecond - place / members.length;
        if ((said[place] ?? 0) >= due) continue;
        said[place] = (said[place] ?? 0) + 1;
        member.say();
      }
      if (passed < seconds * 1000) return;
      clearInterval(timer);
      done();
    }, 5);
  });
  const sent = members.reduce((sum, member) => sum + member.sent, 0) - before;
  // What is still on its way has a second to come.
  await new Promise((done) => setTimeout(done, 1000));
  return { sent, delays: members.flatMap(({ delays }) => delays) };
}

/** Everybody who was at a port that is there again. */
async function returnAll({ port, lacking }: Order & { do: "come-back" }): Promise<Answer> {
  const from = rooms.flat().filter((member) => member.port === port);
  return { sent: 0, delays: await Promise.all(from.map((member) => comeBack(member, lacking))) };
}

const nothing: Answer = { sent: 0, delays: [] };
async function obey(order: Order): Promise<Answer> {
  if (order.do === "talk") return talk(order);
  if (order.do === "come-back") return returnAll(order);
  if (order.do === "meet") await meet(order);
  else {
    for (const member of rooms.flat()) member.close();
    rooms = [];
  }
  return nothing;
}

process.on("message", (order: Order) => void obey(order).then((answer) => process.send?.(answer)));
process.on("disconnect", () => process.exit());
