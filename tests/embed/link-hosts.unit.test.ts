import { describe, expect, test } from "vitest";
import { complainOfForeignLinks, hostsOf, keepOwnLinks } from "../../src/embed/link-hosts.ts";
import type { FoundPart } from "../../src/turn/index.ts";

const part = (link?: string) => ({
  number: "P1",
  kind: "ice-bin",
  name: "Bin",
  price: { minor: 900, currency: "GBP" },
  stock: "in-stock" as const,
  fits: [],
  ...(link ? { link } : {}),
});
const offerWith = (link: string, other = link): FoundPart =>
  ({ kind: "part", part: part(link), alternatives: [part(other)] }) as FoundPart;
const linkOf = (answer: FoundPart) => (answer.kind === "part" ? answer.part.link : "no part");

describe("a link of a part", () => {
  const hosts = hostsOf(
    "https://shop.example/fridge",
    ["https://cdn.example/parts.json", null],
    ["mill.example"],
  );

  test.each([
    ["the page's own host", "https://shop.example/p1"],
    ["a host below it", "https://www.shop.example/p1"],
    ["where the catalogue came from", "http://cdn.example/p1"],
    ["a host that the page names", "https://mill.example:8443/p1"],
  ])("stays where it leads to %s", (_, link) => {
    expect(linkOf(keepOwnLinks(offerWith(link), hosts))).toBe(link);
  });

  test.each([
    ["another shop", "https://elsewhere.example/p1"],
    ["a host that only ends alike", "https://notshop.example/p1"],
    ["no address at all", "https://shop.example:99999/p1"],
    ["a host that only begins alike", "https://shop.example.elsewhere.example/p1"],
  ])("is left out where it leads to %s, and the part stays", (_, link) => {
    const kept = keepOwnLinks(offerWith(link), hosts);
    expect(linkOf(kept)).toBeUndefined();
    expect(kept.kind === "part" && kept.alternatives[0]).not.toHaveProperty("link");
    expect(kept).toMatchObject({ kind: "part", part: { number: "P1" } });
  });

  test("is none where there was none, and an answer without a part stays as it is", () => {
    expect(
      linkOf(keepOwnLinks({ ...offerWith("https://shop.example/"), part: part() } as FoundPart, hosts)),
    ).toBeUndefined();
    expect(keepOwnLinks({ kind: "no-part" } as unknown as FoundPart, hosts)).toEqual({ kind: "no-part" });
  });
});

test("a picture of a part comes from the shop's own hosts only", () => {
  const hosts = hostsOf("https://shop.example/fridge", [], []);
  const offer = (picture: string) =>
    keepOwnLinks({ kind: "part", part: { ...part(), picture }, alternatives: [] } as FoundPart, hosts);
  expect(offer("https://img.shop.example/1.webp")).toMatchObject({ part: { picture: expect.any(String) } });
  const foreign = offer("https://tracker.example/1.gif");
  expect(foreign.kind === "part" && foreign.part).not.toHaveProperty("picture");
});

describe("links and pictures that are left out", () => {
  const hosts = hostsOf("https://shop.example/fridge", [], []);
  const foreign = { link: "https://elsewhere.example/p1", picture: "https://tracker.example/1.gif" };
  const saidOf = async (parts: object[]) => {
    const complaints: string[] = [];
    await complainOfForeignLinks(parts, hosts, (sentence) => complaints.push(sentence));
    return complaints;
  };

  test("are counted at the console, with one of them and what to do", async () => {
    const parts = Array.from({ length: 500 }, () => foreign);
    const [said, ...others] = await saidOf([{}, ...parts]);
    expect(said).toMatch(/^1000 links or pictures .*https:\/\/elsewhere\.example\/p1.*"link-hosts"/);
    expect(others).toEqual([]);
  });

  test("are not mentioned where there are none", async () => {
    expect(await saidOf([{}, { link: "https://www.shop.example/p1" }])).toEqual([]);
  });
});
