import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { createDemoCatalogue, demoSeed, writeDemoCatalogue } from "../../demo/generate/catalogue.ts";
import {
  type FindResult,
  findModel,
  foldCode,
  isOneSlip,
  normaliseCode,
  parseCatalogue,
  partFor,
} from "../../src/catalogue/index.ts";
import { confusions, plateCharacters } from "../catalogue/published-confusions.ts";

const committed = JSON.parse(readFileSync(new URL("../../demo/catalogue.json", import.meta.url), "utf8"));
const { catalogue, problems } = parseCatalogue(committed);
const models = [...catalogue.models.values()];
const kinds = new Set(catalogue.parts.map(({ kind }) => kind));
const plumbed = ["water-filter", "inlet-valve", "supply-line", "fill-tube"];
const ofTanks = ["water-tank", "tank-pump"];

const twinsOf = (key: string) => models.filter((model) => foldCode(model.key) === foldCode(key));
const offered = (found: FindResult) =>
  found.kind === "near" ? found.candidates.map(({ model }) => model.code) : [];

describe("the demo catalogue", () => {
  test("is what the generator makes of its seed", () => {
    expect(committed).toEqual(createDemoCatalogue(demoSeed));
    expect(JSON.parse(writeDemoCatalogue(createDemoCatalogue(demoSeed)))).toEqual(committed);
  });

  test("is another one for another seed", () => {
    expect(createDemoCatalogue(demoSeed + 1)).not.toEqual(committed);
  });

  test("has nothing wrong with it", () => {
    expect(problems).toEqual([]);
    expect(models.length).toBe(committed.models.length);
  });

  test("is as varied as a shop: makers, models, kinds, stock, origins", () => {
    expect(new Set(models.map(({ brand }) => brand)).size).toBeGreaterThanOrEqual(5);
    expect(models.length).toBeGreaterThanOrEqual(72);
    const others = ["bin-sensor", "door-seal", "ice-bin", "ice-maker", "dispenser-flap", "door-switch"];
    expect([...kinds].sort()).toEqual([...plumbed, ...others, ...ofTanks].sort());
    expect(new Set(catalogue.parts.map(({ stock }) => stock)).size).toBe(3);
    expect(new Set(catalogue.parts.map(({ origin }) => origin))).toEqual(new Set(["original", "compatible"]));
    for (const part of catalogue.parts) {
      expect(part.link).toMatch(/^https:\/\/larder-lane\.example\/parts\//);
      expect(part.price.currency).toBe("GBP");
    }
  });

  test("has no filter, valve or anything else of the water supply for tank-fed machines", () => {
    const tankFed = models.filter(({ machine }) => machine === "tank-fed");
    expect(tankFed.length).toBeGreaterThan(0);
    for (const { code } of tankFed) {
      for (const kind of plumbed) expect(partFor(catalogue, code, kind).kind).toBe("no-part");
      expect(partFor(catalogue, code, "bin-sensor").kind).toBe("part");
    }
  });

  test("lacks a kind for some plumbed models", () => {
    const lacking = models.filter(
      ({ machine, code }) =>
        machine !== "tank-fed" &&
        [...kinds].some(
          (kind) => !ofTanks.includes(kind) && partFor(catalogue, code, kind).kind === "no-part",
        ),
    );
    expect(lacking.length).toBeGreaterThan(0);
    expect(lacking.length).toBeLessThan(models.length / 2);
  });

  test("has look-alike twins, ...B8 beside ...88, that take different parts", () => {
    const pair = models.filter(({ key }) => /(B8|88)1$/.test(key) && twinsOf(key).length > 1).slice(0, 2);
    const numbers = pair.map(({ code }) => {
      const fitment = partFor(catalogue, code, "ice-maker");
      return fitment.kind === "part" ? fitment.part.number : undefined;
    });
    expect(pair).toHaveLength(2);
    expect(numbers[0]).not.toBe(numbers[1]);
  });
});

describe("a demo code", () => {
  test("is accepted as typed in lower case without separators, unless it has a twin or one slip makes another", () => {
    const isAlone = ({ key }: (typeof models)[number]) =>
      twinsOf(key).length === 1 && !models.some((other) => isOneSlip(foldCode(key), foldCode(other.key)));
    expect(models.filter(isAlone).length).toBeGreaterThan(models.length / 3);
    for (const model of models) {
      const found = findModel(catalogue, model.key.toLowerCase());
      if (isAlone(model)) expect(found).toMatchObject({ kind: "exact", model });
      else expect(offered(found)[0]).toBe(model.code);
    }
  });

  const disturbances = models.flatMap((model) =>
    [...model.key].flatMap((character, place) =>
      plateCharacters
        .filter((other) => confusions.has(character + other) || foldCode(character) === foldCode(other))
        .filter((other) => other !== character)
        .map((other) => ({ model, typed: model.key.slice(0, place) + other + model.key.slice(place + 1) })),
    ),
  );

  test("is found from every single look-alike or misreading, and never taken for another code", () => {
    expect(disturbances.length).toBeGreaterThan(1000);
    for (const { model, typed } of disturbances) {
      const found = findModel(catalogue, typed);
      expect(found.kind, typed).toBe("near");
      expect(offered(found), typed).toContain(model.code);
    }
  });

  test("is found when two neighbours are swapped, and never taken for another code", () => {
    for (const model of models)
      for (let place = 1; place < model.key.length; place++) {
        const typed = model.key.replace(/(.)(.)/g, (pair, a, b, at) => (at === place - 1 ? b + a : pair));
        if (normaliseCode(typed).kind === "code" && typed !== model.key)
          expect(offered(findModel(catalogue, typed)), typed).toContain(model.code);
      }
  });
});
