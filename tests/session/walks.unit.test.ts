import { beforeAll, describe, expect, test } from "vitest";
import { counts } from "../soak/counts.ts";
import { causeOf, hazardsOf, isReplayOf, story, takeWalks } from "./walking.ts";

describe(`${counts.wandering} people who answer anything, come and go, change their answers and start again`, () => {
  const ungated: string[] = [];
  const unproved: string[] = [];
  const strayed: string[] = [];
  const causes = new Set<string | null>();
  let hazardsMet = 0;

  beforeAll(() => {
    let count = 0;
    for (const walk of takeWalks(counts.wandering, 77, true, 80)) {
      const { open, met } = hazardsOf(walk);
      hazardsMet += met;
      if (open.length) ungated.push(`${open}\n${story(walk)}`);
      const ending = causeOf(walk.last);
      if (ending) causes.add(ending.cause);
      if (ending && !ending.proved) unproved.push(`${ending.cause}\n${story(walk)}`);
      const replayed = count++ < counts.replayed ? walk.steps : walk.steps.slice(-1);
      if (!replayed.every(isReplayOf)) strayed.push(story(walk));
    }
  }, 300_000);

  test("meet no hazardous turn but behind its gates, confirmed in that very visit", () => {
    expect(ungated).toEqual([]);
    // They did come to hazardous turns, else this would prove nothing.
    expect(hazardsMet).toBeGreaterThan(counts.wandering / 3);
  });

  test("end with no cause unless its proof is in the log", () => {
    expect(unproved).toEqual([]);
    expect(causes.size).toBeGreaterThan(8);
  });

  test("are always where the replay of their journal would be, whatever they did last", () => {
    expect(strayed).toEqual([]);
  });
});
