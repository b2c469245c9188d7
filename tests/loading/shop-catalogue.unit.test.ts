import { afterEach, describe, expect, test, vi } from "vitest";
import { createComplaints } from "../../src/loading/complain.ts";
import { createShopCatalogue } from "../../src/loading/shop-catalogue.ts";

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
const answer = async (body: unknown, ok = true) =>
  new Response(typeof body === "string" ? body : JSON.stringify(body), { status: ok ? 200 : 500 });

/** A catalogue behind `address`, and what the page's developer is told of it. */
function open(body: unknown, address = "https://shop.example/c.json") {
  const complaints: string[] = [];
  const get = vi.fn(() => answer(body));
  const hear = { complain: createComplaints((sentence) => complaints.push(sentence)) };
  return { shop: createShopCatalogue(address, get, hear), complaints, get };
}

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

  test("keeps markup as text, drops script links and says so with their count and one of them", async () => {
    const [part] = good.parts;
    const { shop, complaints } = open({ ...good, parts: [part, { ...part, number: "P2", picture: "x:y" }] });
    const fit = await shop.partFor("AB-12", "ice-bin");
    expect(fit).toMatchObject({ kind: "part", part: { name: "<b>Bin</b>" } });
    expect(fit.kind === "part" && "link" in fit.part).toBe(false);
    expect(complaints).toEqual([
      expect.stringMatching(/3 links or pictures .* parts\.0\.link: unsafe-link \("javascript:alert\(1\)"\)/),
    ]);
  });

  test("counts as unusable when no machine is left of it, and says that it is empty", async () => {
    const { shop, complaints } = open({ models: [], parts: [] });
    await expect(shop.findModel("AB12")).rejects.toThrow("unusable");
    await expect(shop.findModel("AB12")).rejects.toThrow("unusable");
    expect(complaints).toEqual([expect.stringContaining("c.json is empty")]);
  });

  test.each([
    ["a web page", "<!doctype html><title>Not here</title>", "sent a web page where JSON was expected"],
    ["spoilt JSON", '{"models": [', "is not JSON"],
  ])("that is %s is unusable, with one sentence", async (_, body, said) => {
    const { shop, complaints } = open(body);
    await expect(shop.findModel("AB12")).rejects.toThrow("unusable");
    await expect(shop.findModel("AB12")).rejects.toThrow("unusable");
    expect(complaints).toEqual([expect.stringContaining(`https://shop.example/c.json ${said}`)]);
  });

  test("of two megabytes in one file works, and is said to belong into many", async () => {
    const { shop, complaints } = open({ ...good, parts: [], note: "x".repeat(2_000_000) });
    expect(await shop.findModel("AB12")).toMatchObject({ kind: "exact" });
    expect(complaints).toEqual([expect.stringMatching(/2\.0 MB in one file.*fridgeside catalogue build/)]);
    expect(shop.isRefused()).toBe(false);
  });

  test("of forty megabytes in one file is given up before the rest is read, with one sentence", async () => {
    let sent = 0;
    const chunk = new TextEncoder().encode(" ".repeat(1_000_000));
    const complaints: string[] = [];
    const body = new ReadableStream({
      pull: (control) => {
        sent += 1;
        if (sent > 40) control.close();
        else control.enqueue(chunk);
      },
    });
    const shop = createShopCatalogue("https://shop.example/c.json", async () => new Response(body), {
      complain: createComplaints((sentence) => complaints.push(sentence)),
    });
    await expect(shop.findModel("AB12")).rejects.toThrow("too-heavy");
    expect(sent).toBeLessThan(20);
    expect(shop.isRefused()).toBe(true);
    expect(complaints).toEqual([expect.stringMatching(/10\.0 MB in one file .*fridgeside catalogue build/)]);
  });

  test("that says beforehand how long it is costs nobody a byte of it", async () => {
    const headers = { "content-length": "40000000" };
    const get = async () => new Response("{}", { headers });
    const shop = createShopCatalogue("https://shop.example/c.json", get, { complain: () => {} });
    await expect(shop.findModel("AB12")).rejects.toThrow("too-heavy");
  });
});
