import type { ShopCatalogue } from "../loading/index.ts";
import type { FoundModel, FoundPart } from "../turn/index.ts";

/** What the shop has for a model, by the kind of part. */
export type PartRow = { kind: string; found: FoundPart };

/** The shop's list of parts, as far as the desk asks. */
export type ShopParts = {
  /** Whether there is one. */
  canLookUp: boolean;
  findModel(typed: string): Promise<FoundModel>;
  /** The parts of these kinds for a confirmed model; kinds that the list has none of are left out. */
  partsFor(model: string, kinds: readonly string[]): Promise<PartRow[]>;
};

export function createShopParts(catalogue: ShopCatalogue | null): ShopParts {
  const missing = () => Promise.reject(new Error("missing"));
  return {
    canLookUp: catalogue !== null,
    findModel: (typed) => catalogue?.findModel(typed) ?? missing(),
    async partsFor(model, kinds) {
      if (!catalogue) return missing();
      const rows = await Promise.all(
        kinds.map(async (kind) => ({ kind, found: await catalogue.partFor(model, kind) })),
      );
      return rows.filter(({ found }) => found.kind === "part" || found.kind === "unread");
    },
  };
}
