import { normaliseCode } from "../../../src/catalogue/index.ts";
import {
  collectShopFeed,
  decode,
  inspectFeed,
  readTable,
  type Understood,
} from "../../../src/workbench/shop-feed/index.ts";
import type { ShopShape } from "./shop-shape.ts";

/** How many of a feed's true fitments a catalogue has, how many it has that are none, and what became of the rows. */
export type ShopAccuracy = {
  truth: number;
  found: number;
  wrong: string[];
  understood: Understood;
  needs: readonly string[];
};

/** Builds by the mapping that `inspect` would write, nothing changed in it. */
export function accuracyOf({ text, truth }: ShopShape, kinds: readonly string[]): ShopAccuracy {
  const tables = { parts: readTable(decode(Buffer.from(text)).text) };
  const { guess } = inspectFeed(tables, { base: "https://shop.example" }, kinds);
  const { feed, understood } = collectShopFeed(tables, guess.mapping, kinds, { few: 3 });
  const { models, parts, offsets, partOf } = feed.collected;
  const pair = (number: string, code: string) => {
    const read = normaliseCode(code);
    return `${number} ${read.kind === "code" ? read.code : code}`;
  };
  const fits = new Set([...truth].flatMap(([number, codes]) => [...codes].map((code) => pair(number, code))));
  const built = models.flatMap(({ code }, model) =>
    [...partOf.slice(offsets[model], offsets[model + 1])].map((part) =>
      pair(parts[part]?.number ?? "", code),
    ),
  );
  const wrong = built.filter((one) => !fits.has(one));
  return {
    truth: fits.size,
    found: new Set(built).size - new Set(wrong).size,
    wrong,
    understood,
    needs: guess.needs,
  };
}
