import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { inMinutes, runTimed, secondsOf, sumOf } from "./timed.ts";

describe("what a stage of the tests took", () => {
  test.each([
    ["0m0.00s 0m0.01s\n1m2.50s 0m1.25s\n", 63.76],
    ["0m0,00s 0m0,50s\n0m1,00s 0m0,00s\n", 1.5],
    ["nothing of the kind", null],
  ])("is read from the shell's times: %j", (text, seconds) => {
    expect(secondsOf(text)).toEqual(seconds === null ? null : expect.closeTo(seconds, 6));
  });

  test("ends with the command's own status, and knows the processor time of its children", () => {
    const busy = `"${process.execPath}" -e "while (process.cpuUsage().user < 60000); process.exit(3)"`;
    const { status, took } = runTimed(busy, tmpdir(), join(tmpdir(), `times-${process.pid}.txt`));
    expect(status).toBe(3);
    expect(took.processor).toBeGreaterThanOrEqual(0.06);
  });

  test("is told in minutes, without a processor time where one stage has none", () => {
    const some = { wall: 90, processor: 120 };
    expect(inMinutes(sumOf([some, some]))).toBe("3.0 min, 4.0 min of processor time");
    expect(inMinutes(sumOf([some, { wall: 30, processor: null }]))).toBe("2.0 min");
  });
});
