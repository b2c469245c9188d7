import { describe, expect, test } from "vitest";
import { Device } from "../device.ts";
import { createLab, type Lab } from "../lossy.ts";

/* What the relay does by the clock. */

const minute = 60_000;

/** Everything arrives and is synced, a few times over. */
async function pass(lab: Lab, ...devices: Device[]) {
  for (let round = 0; round < 6; round++) {
    for (const device of devices) {
      device.act();
      for (const way of ["toRelay", "toDevice"] as const)
        while (device.line?.[way].length) device.line.deliver(way, 0);
    }
    await lab.settle();
    lab.sync();
    await lab.settle();
    for (const { line } of devices) while (line?.toDevice.length) line.deliver("toDevice", 0);
  }
}

/** Time goes by, and the relay looks at what is over. */
async function wait(lab: Lab, span: number) {
  lab.clock.now += span;
  const looked = lab.hub().tick();
  await lab.settle();
  lab.sync();
  await looked;
}

async function meet(lab: Lab) {
  const phone = new Device(lab, { type: "open", v: 1 });
  await pass(lab, phone);
  const desk = new Device(lab, { type: "join", v: 1, code: phone.code, token: "Ash" });
  await pass(lab, phone, desk);
  phone.say("admit", "a1", "steering");
  await pass(lab, phone, desk);
  return { phone, desk };
}

const forgotten = (lab: Lab) => lab.kept().filter(({ op }) => op === "forget").length;

/** An agent in a room, who has stopped reading when something is shared. */
async function shareUnread(lab: Lab) {
  const { phone, desk } = await meet(lab);
  const { line } = desk;
  if (!line) throw new Error("no line");
  line.isFull = true;
  phone.say("entry", "x");
  await pass(lab, phone);
  return { phone, desk, line };
}

describe("a reader who does not read", () => {
  test("is sent no more, cut after 15 seconds, and catches up on the next line", async () => {
    const lab = createLab();
    const { phone, desk, line } = await shareUnread(lab);
    expect(line.toDevice).toEqual([]);
    await wait(lab, 14_999);
    expect(line.isUp).toBe(true);
    await wait(lab, 1);
    expect(line.isUp).toBe(false);
    await pass(lab, phone, desk);
    expect(desk.records.at(-1)).toMatchObject({ kind: "entry", body: "x" });
  });

  test("who reads on in time is sent the rest", async () => {
    const lab = createLab();
    const { phone, desk, line } = await shareUnread(lab);
    line.isFull = false;
    await wait(lab, 1000);
    await pass(lab, phone, desk);
    expect(desk.line).toBe(line);
    expect(desk.records.at(-1)).toMatchObject({ body: "x" });
  });
});

describe("a connection on which nobody says who they are", () => {
  test("is ended after ten seconds", async () => {
    const lab = createLab();
    const heard: string[] = [];
    const line = lab.dial((text) => void heard.push(text));
    await wait(lab, 10_000);
    expect(line.toDevice).toEqual([]);
    await wait(lab, 1);
    while (line.toDevice.length) line.deliver("toDevice", 0);
    expect(heard).toEqual(['{"type":"no","why":"silent"}']);
    expect(line.isUp).toBe(false);
  });
});

describe("a room", () => {
  test("ends two hours after it was opened, and is forgotten a minute later", async () => {
    const lab = createLab();
    const { phone, desk } = await meet(lab);
    await wait(lab, 119 * minute);
    expect(phone.line?.isUp).toBe(true);
    await wait(lab, minute);
    for (const { line } of [phone, desk]) while (line?.toDevice.length) line.deliver("toDevice", 0);
    expect([phone.no, desk.no]).toEqual(["ended", "ended"]);
    expect(forgotten(lab)).toBe(0);
    await wait(lab, minute);
    expect(forgotten(lab)).toBe(1);
    await pass(lab, phone);
    expect(phone.no).toBe("unknown");
  });

  test("that nobody has joined ends with its code", async () => {
    const lab = createLab();
    const phone = new Device(lab, { type: "open", v: 1 });
    await pass(lab, phone);
    await wait(lab, 10 * minute);
    while (phone.line?.toDevice.length) phone.line.deliver("toDevice", 0);
    expect(phone.no).toBe("ended");
    await wait(lab, minute);
    expect(lab.hub().counts().rooms).toBe(0);
    expect(forgotten(lab)).toBe(1);
  });

  test("that was ended still gives a reader who was away what they missed, for a minute", async () => {
    const lab = createLab();
    const { phone, desk } = await meet(lab);
    desk.line?.drop();
    phone.say("entry", "last words");
    await pass(lab, phone);
    phone.say("end", "", "steering");
    await pass(lab, phone);
    expect(phone.no).toBe("ended");
    await pass(lab, desk);
    expect(desk.records.map(({ body, kind }) => body || kind).slice(-2)).toEqual(["last words", "end"]);
    expect(desk.no).toBe("ended");
  });
});
