import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { expect, test } from "vitest";
import { counts } from "../soak/counts.ts";
import { Device } from "./device.ts";
import { createLab, type Lab } from "./lossy.ts";

/*
 * A phone and two desks at one relay. Lines drop, double and mix up what is on its way, and go down; the disk syncs when
 * it likes; the relay is killed; pages are loaded again. Whatever happens, all come to one journal.
 */

type Step =
  | { do: "say" | "act" | "reload" | "hang-up"; who: number }
  | { do: "deliver" | "drop" | "double"; who: number; way: "toRelay" | "toDevice"; place: number }
  | { do: "sync" | "kill" | "pause" | "resume" }
  | { do: "wait"; for: number };

const who = fc.nat({ max: 2 });
const way = fc.constantFrom("toRelay" as const, "toDevice" as const);
const place = fc.nat({ max: 5 });
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant("say" as const), who }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constant("act" as const), who }) },
  { weight: 14, arbitrary: fc.record({ do: fc.constant("deliver" as const), who, way, place }) },
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constantFrom("drop" as const, "double" as const), who, way, place }),
  },
  { weight: 6, arbitrary: fc.record({ do: fc.constant("sync" as const) }) },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constantFrom("reload" as const, "hang-up" as const),
      who,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constantFrom("kill" as const, "pause" as const, "resume" as const) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constant("wait" as const), for: fc.integer({ min: 1, max: 5000 }) }),
  },
);

/** Lets everything arrive in its order, until nothing is on its way and nobody has anything left to say. */
async function calmDown(lab: Lab, devices: Device[]) {
  for (let round = 0; round < 400; round++) {
    // What was on its way says how far the log had come before.
    for (const device of devices) if (round === 1) device.hasAll = false;
    for (const device of devices) device.act();
    for (let more = true; more; ) {
      more = false;
      for (const { line } of devices)
        for (const way of ["toRelay", "toDevice"] as const)
          while (line?.[way].length) {
            line.deliver(way, 0);
            more = true;
          }
      await lab.settle();
      lab.sync();
      await lab.settle();
    }
    lab.clock.now += 2000;
    if (round > 1 && devices.every((device) => device.line?.isUp && device.hasAll && device.isHeard()))
      return;
  }
  throw new Error("It does not come to rest");
}

/** A phone that has let two agents in. */
async function meet(lab: Lab): Promise<Device[]> {
  const phone = new Device(lab, { type: "open", v: 1 });
  const devices = [phone];
  await calmDown(lab, devices);
  for (const token of ["Ash", "Bea"]) {
    if (token === "Bea") phone.say("code", "", "steering");
    await calmDown(lab, devices);
    devices.push(new Device(lab, { type: "join", v: 1, code: phone.code, token }));
    await calmDown(lab, devices);
    phone.say("admit", `a${devices.length - 1}`, "steering");
    await calmDown(lab, devices);
  }
  return devices;
}

/** The log of the one room on the disk. */
const keptOf = (lab: Lab) =>
  lab.kept().flatMap((change) => {
    if (change.op !== "append") return [];
    const { sealed: _, ...record } = change.stored;
    return [record];
  });

/** The newest that somebody has seen is on the disk, in that place: nobody sees what a power cut may still take away. */
function expectKept(lab: Lab, devices: Device[]) {
  const kept = keptOf(lab);
  for (const { records } of devices)
    if (!isDeepStrictEqual(records.at(-1), kept[records.length - 1]))
      expect(records).toEqual(kept.slice(0, records.length));
}

async function play(steps: Step[]) {
  const lab = createLab();
  const devices = await meet(lab);
  const said: string[][] = [[], [], []];
  for (const one of steps) {
    const device = "who" in one ? devices[one.who] : undefined;
    const queue = device?.line && "way" in one ? device.line[one.way] : [];
    if (one.do === "say" && device) {
      const body = `${one.who}-${said[one.who]?.length}`;
      said[one.who]?.push(body);
      device.say(one.who === 0 ? "entry" : "propose", body);
    } else if (one.do === "act") device?.act();
    else if (one.do === "reload") device?.reload();
    else if (one.do === "hang-up") device?.line?.drop();
    else if (one.do === "deliver" && device?.line)
      device.line.deliver(one.way, one.place % (queue.length || 1));
    else if (one.do === "drop") queue.splice(one.place % (queue.length || 1), 1);
    else if (one.do === "double") queue.push(...queue.slice(one.place % (queue.length || 1)).slice(0, 1));
    else if (one.do === "sync") lab.sync();
    else if (one.do === "kill") lab.kill();
    else if (one.do === "pause" || one.do === "resume") devices[0]?.say(one.do, "", "steering");
    else if (one.do === "wait") lab.clock.now += one.for;
    await lab.settle();
    expectKept(lab, devices);
  }
  devices[0]?.say("resume", "", "steering");
  await calmDown(lab, devices);
  return { lab, devices, said };
}

test("whatever happens on the way, all come to one journal: nothing lost, nothing twice, one order", async () => {
  const faults = { kill: 0, reload: 0, pause: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 40, maxLength: 200, size: "max" }), async (steps) => {
      for (const one of steps) if (Object.hasOwn(faults, one.do)) faults[one.do as keyof typeof faults]++;
      const { lab, devices, said } = await play(steps);
      const kept = keptOf(lab);
      for (const { records } of devices) expect(records).toEqual(kept);
      expect(kept.map(({ seq }) => seq)).toEqual(kept.map((_, place) => place + 1));
      // Each sender's own order, each message once.
      for (const [place, from] of ["h", "a1", "a2"].entries())
        expect(
          kept.filter((one) => one.from === from && /entry|propose/.test(one.kind)).map(({ body }) => body),
        ).toEqual(said[place]);
    }),
    { numRuns: counts.lines },
  );
  // The schedules are of the kind that this is about.
  for (const count of Object.values(faults)) expect(count).toBeGreaterThan(counts.lines / 2);
});
