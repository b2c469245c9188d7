import { describe, expect, it } from "vitest";
import { batchesPerDay } from "./cold.ts";
import { approach, flowThrough, freezingSeconds, kPaOfHead, kPaOfPsi } from "./physics.ts";

describe("physics of the world", () => {
  it("freezes Singh and Heldman's sphere of 7 cm in 0.723 h, and in 1.002 h with less air", () => {
    const food = { density: 1000, latent: 250_000, conductivity: 1.2, freezesAt: -1.25 };
    expect(freezingSeconds("sphere", 0.07, -40, 50, food) / 3600).toBeCloseTo(0.723, 3);
    expect(freezingSeconds("sphere", 0.07, -40, 30, food) / 3600).toBeCloseTo(1.002, 3);
  });

  it.each([
    [-18, 75.8],
    [-15, 90.9],
    [-12, 113.7],
    [-9, 151.5],
    [-6, 227.3],
  ])("freezes a cylinder of ice of 25 mm at %d °C in %d min", (airC, minutes) => {
    expect(freezingSeconds("cylinder", 0.025, airC, 25) / 60).toBeCloseTo(minutes, 1);
  });

  it("never freezes what is not colder than its freezing point", () => {
    expect(freezingSeconds("slab", 0.02, 0, 25)).toBe(Number.POSITIVE_INFINITY);
  });

  it("lets √(80/25) times the water through a way of pipes at 80 instead of 25 psi", () => {
    const flow = (psi: number) => flowThrough(kPaOfPsi(psi), 0.5, 0);
    expect(flow(80) / flow(25)).toBeCloseTo(1.789, 3);
  });

  it("lets water through carbon in proportion to the pressure", () => {
    expect(flowThrough(200, 0, 10)).toBeCloseTo(2 * flowThrough(100, 0, 10), 12);
  });

  it("loses 51 % of the pressure in a filter that leaves 0.7 of the flow", () => {
    const bypass = flowThrough(300, 0.6, 0);
    const kept = 0.6 * (0.7 * bypass) ** 2;
    expect(1 - kept / 300).toBeCloseTo(0.51, 12);
    const carbon = (300 - kept) / (0.7 * bypass);
    expect(flowThrough(300, 0.6, carbon)).toBeCloseTo(0.7 * bypass, 9);
  });

  it("turns 7 m of water into 68.647 kPa and 25 psi into 172.369", () => {
    expect(kPaOfHead(7)).toBeCloseTo(68.647, 3);
    expect(kPaOfPsi(25)).toBeCloseTo(172.369, 3);
  });

  it("makes the 14.286 batches a day at −18 °C that 2000 g of 140 g are, half of them at −9, none at −6", () => {
    expect(batchesPerDay(-18)).toBeCloseTo(14.286, 2);
    expect(batchesPerDay(-9)).toBeCloseTo(14.286 / 2, 2);
    expect(batchesPerDay(-6)).toBe(0);
  });

  it("closes a gap to 1/e within its time constant", () => {
    expect(approach(20, -18, 6, 6)).toBeCloseTo(-18 + 38 / Math.E, 9);
  });
});
