import { expect, test } from "vitest";
import { textsNeeded } from "../../src/guide/texts-needed.ts";
import { expectedKeys } from "../locales/expected-keys.ts";
import { ownFlow } from "../own-flow.ts";
import { plant } from "./planted.ts";

const flow = ownFlow;

test("the verifier calls for every text that belongs to an id of the flow, and for no other", () => {
  const { needed } = expectedKeys(flow);
  const called = new Set(textsNeeded(flow).map(({ key }) => key));
  // Texts of the screens belong to no id: the flow cannot call for them.
  const screens =
    /^(claims|endings|standing|notices|findings|resumed|care\.(ask|times|filter|machine))\.|^care\.[\w-]+$/;
  const missed = needed.filter(
    (key) => !called.has(key) && !screens.test(key) && key !== "who.shop.name" && key !== "who.shop.tell",
  );
  expect(missed).toEqual([]);
  expect([...called].filter((key) => !needed.includes(key))).toEqual([]);
});

test("a tool that is misspelt in one check has the right one offered", () => {
  const { found } = plant({
    file: "checks/supply-line.yaml",
    find: "tools: [towel",
    put: "tools: [towl",
  });
  expect(found).toMatchObject([{ code: "missing-text", suggestion: "towel" }]);
});

test("a text file that cannot be read is one problem, not one for each of its texts", () => {
  const { found } = plant({ file: "locales/en-GB/stations.yaml", find: "", put: "cold: [\n" });
  expect(found.map(({ file }) => file)).toEqual(["en-GB/stations.yaml"]);
});

test("American texts lean on the British ones where they do not differ, never the other way round", () => {
  const without = (tag: string) => {
    const { found } = plant({ file: `locales/${tag}/stations.yaml`, find: "filter:", put: "sieve:" });
    return [...new Set(found.map(({ message }) => message))];
  };
  expect(without("en-GB")).toEqual(['There is no text "stations.filter" in en-GB.']);
  expect(without("en-US")).toEqual([]);
});
