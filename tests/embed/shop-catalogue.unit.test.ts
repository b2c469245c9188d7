import { afterEach, describe, expect, test, vi } from "vitest";
import { createShopCatalogue } from "../../src/embed/shop-catalogue.ts";

const good = {
  models: [{ code: "AB-12", brand: "Nettlewick", machine: "bottom-freezer" }],
  parts: [
    {
      number: "P1",
      kind: "ice-bin",
      name: "<b>Bin</b>",
      price: { minor: 900, currency: "GBP" },
      stock: "in-stock",
      link: "javascript:alert(1)",
      fits: ["AB-12"],
    },
  ],
};
const answer = (body: unknown, ok = true) => Promise.resolve({ ok, json: async () => body } as Response);

afterEach(() => vi.restoreAllMocks());

describe("the shop's catalogue", () => {
  test("is fetched once for many questions", async () => {
    const get = vi.fn(() => answer({ ...good, parts: [] }));
    const shop = createShopCatalogue("https://shop.example/c.json", get);
    await shop.findModel("ab12");
    await shop.partFor("AB-12", "ice-bin");
    expect(get).toHaveBeenCalledTimes(1);
  });

  test("is tried anew after it was out of reach", async () => {
    const get = vi.fn().mockReturnValueOnce(answer(null, false)).mockReturnValueOnce(answer(good));
    vi.spyOn(console, "warn").mockReturnValue();
    const shop = createShopCatalogue("https://shop.example/c.json", get);
    await expect(shop.findModel("AB12")).rejects.toThrow("unreachable");
    expect((await shop.findModel("AB12")).kind).toBe("exact");
  });

  test("is asked for nothing where the page names none", async () => {
    const get = vi.fn();
    await expect(createShopCatalogue(null, get).partFor("AB-12", "ice-bin")).rejects.toThrow("missing");
    expect(get).not.toHaveBeenCalled();
  });

  test("keeps markup as text, drops a script link and says so in the console", async () => {
    const warned = vi.spyOn(console, "warn").mockReturnValue();
    const fit = await createShopCatalogue("https://shop.example/c.json", () => answer(good)).partFor(
      "AB-12",
      "ice-bin",
    );
    expect(fit).toMatchObject({ kind: "part", part: { name: "<b>Bin</b>" } });
    expect(fit.kind === "part" && "link" in fit.part).toBe(false);
    expect(warned).toHaveBeenCalledWith(expect.stringContaining("unsafe-link"));
  });

  test("counts as unusable when no machine is left of it", async () => {
    vi.spyOn(console, "warn").mockReturnValue();
    const shop = createShopCatalogue("https://shop.example/c.json", () => answer({ models: "many" }));
    await expect(shop.findModel("AB12")).rejects.toThrow("unusable");
  });
});
