import fc from "fast-check";
import { expect, test } from "vitest";
import { kinds } from "../../../src/cobrowse/protocol/index.ts";
import { laneOf, type Stored } from "../../../src/cobrowse/protocol/room/index.ts";
import { counts } from "../../soak/counts.ts";
import { Device } from "../device.ts";
import { createLab, type Lab, type LossyLine } from "../lossy.ts";

/* An agent who was let in sends whatever would make them the householder. Whatever comes of it is theirs, and a suggestion. */

const ofAgents = [...kinds.carried.agent, ...kinds.steering.agent];
const inherited = ["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "valueOf"];
const everyKind = [
  ...new Set(Object.values(kinds).flatMap(({ householder, agent }) => [...householder, ...agent])),
  ...["opened", "joined", "Entry", "entry ", "entry\0", "", ...inherited],
];

const kind = fc.constantFrom(...everyKind);
/** Mostly what could be taken, so that attempts come as far as the judge. */
const mostly = (usual: string[], others: string[]) =>
  fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom(...usual) },
    { weight: 1, arbitrary: fc.constantFrom(...others, ...inherited) },
  );
const lane = mostly(["carried", "steering"], ["entry"]);
const body = fc.constantFrom("", "h", "a1", "a2", '{"from":"h"}', "__proto__", "x");
/** The number that would be taken next, and others. */
const ahead = fc.constantFrom(0, 0, 0, 0, -1, 1, 1e6, 0.5, -7);
const claimed = fc.constantFrom("h", "householder", "agent", 1, true, null, [], {}, "a1");
const claims = fc.dictionary(
  fc.constantFrom(
    ...["from", "peer", "role", "sender", "seq", "at", "sealed", "secret", "admitted", "type", "kind"],
    ...inherited,
  ),
  claimed,
  { maxKeys: 2, noNullPrototype: true },
);
const type = mostly(["put"], ["record", "open", "join", "return", "kept"]);
const attempt = fc.record({
  type,
  lane,
  kind,
  body,
  ahead,
  claims,
  isBare: fc.boolean(),
  isFirst: fc.nat({ max: 9 }),
});
type Attempt = typeof attempt extends fc.Arbitrary<infer Value> ? Value : never;

/** So many attempts go at one room, which would be full at last. */
const atOnce = 200;

const logOf = (lab: Lab): Stored[] =>
  lab.kept().flatMap((change) => (change.op === "append" ? [change.stored] : []));

async function pass(lab: Lab, line: LossyLine, text?: string) {
  if (text !== undefined) line.toRelay.push(text);
  while (line.toRelay.length) line.deliver("toRelay", 0);
  for (let nth = 0; nth < 2; nth++) {
    await lab.settle();
    lab.sync();
  }
  await lab.settle();
}

async function meet(lab: Lab) {
  const phone = new Device(lab, { type: "open", v: 1 });
  const act = async (device: Device) => {
    for (let nth = 0; nth < 3; nth++) {
      device.act();
      if (device.line) await pass(lab, device.line);
      while (device.line?.toDevice.length) device.line.deliver("toDevice", 0);
    }
  };
  await act(phone);
  const desk = new Device(lab, { type: "join", v: 1, code: phone.code, token: "Ash" });
  await act(desk);
  phone.say("admit", "a1", "steering");
  await act(phone);
  return desk.state.place as NonNullable<Device["state"]["place"]>;
}

/** As text, since an object would lose the names that every object has. */
function textOf({ type, lane, kind, body, ahead, claims, isBare }: Attempt, log: Stored[]): string {
  const own = log.filter((one) => one.from === "a1" && laneOf(one.kind) === lane).length;
  const message = { type, lane, n: own + 1 + ahead, kind, body };
  const claimed = Object.entries(isBare ? {} : claims).map(
    ([name, value]) => `${JSON.stringify(name)}:${JSON.stringify(value)}`,
  );
  return `{${[JSON.stringify(message).slice(1, -1), ...claimed].join(",")}}`;
}

test(`of ${counts.forged} messages of an agent, none is a record that is the householder's to send`, async () => {
  const kept = new Map<string, number>();
  let tried = 0;
  const enter = async () => {
    const lab = createLab();
    return [lab, await meet(lab), lab.dial(() => {})] as [Lab, Awaited<ReturnType<typeof meet>>, LossyLine];
  };
  const count = (log: Stored[]) => {
    expect(log.slice(0, 3).map(({ from, kind }) => `${from} ${kind}`)).toEqual([
      "h opened",
      "a1 joined",
      "h admit",
    ]);
    for (const { from, kind } of log.slice(3)) {
      expect(from).toBe("a1");
      expect(ofAgents).toContain(kind);
      kept.set(kind, (kept.get(kind) ?? 0) + 1);
    }
  };
  await fc.assert(
    fc.asyncProperty(fc.array(attempt, { minLength: atOnce, maxLength: atOnce }), async (attempts) => {
      let [lab, place, line] = await enter();
      for (const one of attempts) {
        tried++;
        if (!line.isUp || one.isFirst < 2) {
          line.drop();
          // Some try it by what they come back with: the householder's name, or a role beside their own.
          const peer = one.isFirst === 0 ? `${one.claims.peer ?? "h"}` : place.peer;
          const role = one.isFirst === 1 ? { role: "householder", from: "h" } : {};
          line = lab.dial(() => {});
          await pass(
            lab,
            line,
            JSON.stringify({ type: "return", v: 1, ...place, peer, after: logOf(lab).length, ...role }),
          );
        }
        await pass(lab, line, textOf(one, logOf(lab)));
        lab.clock.now += 1000;
        if (line.toDevice.includes("")) line.drop();
        if (logOf(lab).at(-1)?.kind !== "leave") continue;
        count(logOf(lab));
        [lab, place, line] = await enter();
      }
      count(logOf(lab));
    }),
    { numRuns: counts.forged / atOnce, endOnFailure: true },
  );
  expect(tried).toBe(counts.forged);
  // What an agent may send did get through, so the attempts came as far as the judge.
  for (const kind of ofAgents) expect(kept.get(kind), kind).toBeGreaterThan(0);
});
