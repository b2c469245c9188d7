import { expect, test } from "vitest";
import { createDrawings } from "../../src/loading/drawings.ts";

const right = { title: "A tank.", shapes: ["b1 M0 0l9 9z"], legend: [] };

/** Drawings on a server that answers what it is told to, one answer after the other; null is no connection. */
function open(...answers: (string | null)[]) {
  const asked: [address: string, cache: string | undefined][] = [];
  const get = (async (address: string, settings?: RequestInit) => {
    asked.push([address, settings?.cache]);
    const answer = answers.shift() ?? null;
    if (answer === null) throw new TypeError("Failed to fetch");
    return new Response(answer, { status: answer === "gone" ? 404 : 200 });
  }) as typeof fetch;
  return { ...createDrawings((id) => `/${id}.json`, get), asked };
}

test("a drawing is fetched once, by whoever asks for it meanwhile and later", async () => {
  const { load, known, asked } = open(JSON.stringify(right));
  await Promise.all([load("tank"), load("tank")]);
  await load("tank");
  expect(asked).toEqual([["/tank.json", "default"]]);
  expect(known.get("tank")).toEqual(right);
});

test.each([
  ["no connection", null],
  ["an answer that the file is gone", "gone"],
  ["a page in its place", "<!doctype html>"],
  ["a drawing without words", '{"shapes":[]}'],
  ["nothing", "null"],
])("%s leaves no drawing, and it is fetched anew the next time, past every cache", async (_, answer) => {
  const { load, known, asked } = open(answer, JSON.stringify(right));
  await load("tank");
  expect(known.size).toBe(0);
  await load("tank");
  expect(asked.map(([, cache]) => cache)).toEqual(["default", "reload"]);
  expect(known.get("tank")).toEqual(right);
});
