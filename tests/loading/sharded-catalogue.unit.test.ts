import { afterEach, describe, expect, test, vi } from "vitest";
import { createShopCatalogue } from "../../src/loading/shop-catalogue.ts";
import { collect, shardsOf } from "../catalogue/shards-in-memory.ts";

const address = "https://shop.example/catalogue/catalogue.json?of=today";

/** A shop's web server; `publish` puts another catalogue in place of the one before and takes its folder away. */
function createServer() {
  const files = new Map<string, string>();
  const asked: string[] = [];
  const publish = (folder: string, ...codes: string[]) => {
    const { manifest, written } = shardsOf(collect(codes));
    files.clear();
    files.set(address, JSON.stringify({ ...manifest, folder }));
    for (const [path, text] of written) files.set(`https://shop.example/catalogue/${folder}/${path}`, text);
  };
  const get: typeof fetch = async (where, { cache } = {}) => {
    asked.push(String(where));
    // Only what may change is asked for whether it has.
    expect(cache).toBe(where === address ? "no-cache" : "default");
    const text = files.get(String(where));
    return text === undefined ? new Response("", { status: 404 }) : new Response(text);
  };
  return { publish, get, asked, files };
}

afterEach(() => vi.restoreAllMocks());

describe("a shop's catalogue of many files", () => {
  test("is told by its manifest, and a listed code takes one more file, which has the part as well", async () => {
    const { publish, get, asked } = createServer();
    publish("c-1", "WXM 431A/EU", "TBY-570-S1.R");
    const shop = createShopCatalogue(address, get);
    expect(await shop.findModel("wxm431aeu")).toMatchObject({ kind: "exact" });
    expect(await shop.partFor("WXM 431A/EU", "ice-bin")).toMatchObject({
      part: { number: "bin-WXM 431A/EU" },
    });
    expect(asked).toHaveLength(2);
    expect(asked[1]).toMatch(/^https:\/\/shop\.example\/catalogue\/c-1\/models\//);
  });

  test("that was replaced while the page was open is looked for once more where it is now", async () => {
    const { publish, get } = createServer();
    publish("c-1", "WXM 431A/EU", "TBY-570-S1.R");
    const shop = createShopCatalogue(address, get);
    await shop.findModel("WXM 431A/EU");
    publish("c-2", "WXM 431A/EU", "BLQ254NH/A0", "KX12A4");
    expect(await shop.findModel("BLQ254NH/A9")).toMatchObject({ kind: "near" });
    expect(await shop.partFor("KX12A4", "ice-bin")).toMatchObject({ kind: "part" });
  });

  test("of which a file is missing rejects, and is asked again at the next question", async () => {
    const { publish, get, asked, files } = createServer();
    publish("c-1", "WXM 431A/EU");
    const kept = new Map(files);
    for (const path of kept.keys()) if (path.includes("/models/")) files.delete(path);
    const shop = createShopCatalogue(address, get);
    await expect(shop.findModel("WXM 431A/EU")).rejects.toThrow("gone");
    expect(asked.filter((path) => path === address)).toHaveLength(2);
    for (const [path, text] of kept) files.set(path, text);
    expect(await shop.findModel("WXM 431A/EU")).toMatchObject({ kind: "exact" });
  });

  test.each([
    [{ format: "fridgeside-shards-9" }],
    [{ format: "fridgeside-shards-1", folder: "../elsewhere", models: 1, tree: "", nearby: 1, split: "" }],
    [{ format: "fridgeside-shards-1", folder: "c-1", models: 1, tree: "", nearby: 0, split: "" }],
  ])("with the manifest %j is unusable", async (manifest) => {
    const { get, files } = createServer();
    files.set(address, JSON.stringify(manifest));
    await expect(createShopCatalogue(address, get).findModel("WXM 431A/EU")).rejects.toThrow("unusable");
  });

  test("is fetched early without a question, and a failure then troubles nobody", async () => {
    const { get, asked } = createServer();
    createShopCatalogue(address, get).warmUp();
    await vi.waitFor(() => expect(asked).toEqual([address]));
  });
});
