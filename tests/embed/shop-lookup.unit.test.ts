import { afterEach, describe, expect, test, vi } from "vitest";
import { createShopLookup, lookupAt } from "../../src/embed/shop-lookup.ts";
import { createComplaints } from "../../src/loading/complain.ts";

const model = { code: "AB-12", brand: "Nettlewick", machine: "bottom-freezer" };
const part = {
  number: "P1",
  kind: "ice-bin",
  name: "<b>Bin</b>",
  price: { minor: 900, currency: "GBP" },
  stock: "in-stock",
  link: "javascript:alert(1)",
  fits: ["AB-12"],
};
const answer = { models: [model], parts: [part] };

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe("a shop that is asked code by code", () => {
  test("gives the model for a code and then its part, and is asked once for both", async () => {
    vi.spyOn(console, "warn").mockReturnValue();
    const ask = vi.fn(async () => answer);
    const shop = createShopLookup(ask);
    expect(await shop.findModel("AB-12")).toMatchObject({ kind: "exact", model: { code: "AB-12" } });
    expect(await shop.partFor("AB-12", "ice-bin")).toMatchObject({ kind: "part" });
    expect(ask.mock.calls).toEqual([["AB-12"]]);
  });

  test("has a near miss offered and never taken, whatever the shop's own search thinks", async () => {
    const shop = createShopLookup(() => ({ ...answer, parts: [] }));
    expect(await shop.findModel("AB-1Z")).toMatchObject({ kind: "near" });
  });

  test("keeps markup as text and drops a script link", async () => {
    const warned = vi.fn();
    const fit = await createShopLookup(() => answer, warned).partFor("AB-12", "ice-bin");
    expect(fit).toMatchObject({ kind: "part", part: { name: "<b>Bin</b>" } });
    expect(fit.kind === "part" && fit.part.link).toBeUndefined();
    expect(warned.mock.calls.flat().join()).toContain("unsafe-link");
  });

  test.each([
    ["throws", () => Promise.reject(new Error("no such table")), "lookup failed twice: no such table"],
    ["answers with a web page", async () => "<html>", "got a web page"],
    ["answers something else", async () => 7, "lookup must answer {models: [...], parts: [...]}"],
  ])("that %s says so at the console, once for all codes", async (_, ask, said) => {
    const complaints: string[] = [];
    const shop = createShopLookup(
      ask,
      createComplaints((sentence) => complaints.push(sentence)),
    );
    for (const code of ["AB-12", "CD-34"]) await expect(shop.findModel(code)).rejects.toThrow();
    expect(complaints).toEqual([expect.stringContaining(said)]);
  });

  test("is asked once more at once where it fails, and anew at the next question", async () => {
    const ask = vi
      .fn()
      .mockRejectedValueOnce(new Error("busy"))
      .mockRejectedValueOnce(new Error("busy"))
      .mockResolvedValue({ ...answer, parts: [] });
    const shop = createShopLookup(ask);
    await expect(shop.findModel("AB12")).rejects.toThrow("busy");
    expect(ask).toHaveBeenCalledTimes(2);
    expect((await shop.findModel("AB12")).kind).toBe("exact");
  });

  test("that throws at once, or never answers, keeps nobody waiting for ever", async () => {
    vi.useFakeTimers();
    const thrown = createShopLookup(() => {
      throw new Error("broken");
    });
    await expect(thrown.findModel("AB12")).rejects.toThrow("broken");
    const silent = expect(createShopLookup(() => new Promise(() => {})).findModel("AB12")).rejects.toThrow(
      "no-answer",
    );
    await vi.advanceTimersByTimeAsync(16_000);
    await silent;
  });

  test.each([
    ["nothing", undefined],
    ["a page", "<html>"],
    ["another shape", { results: [] }],
  ])("that answers %s counts as broken, not as a shop without the model", async (_, nonsense) => {
    vi.spyOn(console, "warn").mockReturnValue();
    await expect(createShopLookup(() => nonsense).findModel("AB12")).rejects.toThrow("unusable");
  });

  test("that knows no such model says so", async () => {
    const shop = createShopLookup(() => ({ models: [], parts: [] }));
    expect(await shop.findModel("ZZ99")).toMatchObject({ kind: "unknown" });
  });
});

describe("an address that is asked", () => {
  const at = (status: number, body: unknown = {}) =>
    vi.fn(async (_address: unknown) => new Response(JSON.stringify(body), { status }));

  test("gets the code as a parameter, whatever is in it, beside its own", async () => {
    const get = at(200, answer);
    expect(await lookupAt("https://shop.example/find?lang=en", get as typeof fetch)("A/B&c=1")).toEqual(
      answer,
    );
    expect(get.mock.calls[0]?.[0]).toBe("https://shop.example/find?lang=en&code=A%2FB%26c%3D1");
  });

  test("says with 404 that there is no such model, and with anything else that it is out of order", async () => {
    const nothing = await lookupAt("https://shop.example/find", at(404) as typeof fetch)("X1");
    expect(nothing).toEqual({ models: [], parts: [] });
    await expect(lookupAt("https://shop.example/find", at(500) as typeof fetch)("X1")).rejects.toThrow();
  });

  test("that sends a web page where JSON was expected is named at the console", async () => {
    const complaints: string[] = [];
    const get = async () => new Response("<!doctype html>");
    const ask = lookupAt("https://shop.example/find", get, (sentence) => complaints.push(sentence));
    await expect(ask("X1")).rejects.toThrow("unusable");
    expect(complaints).toEqual(["https://shop.example/find sent a web page where JSON was expected."]);
  });
});
