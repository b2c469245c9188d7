import { normaliseCode } from "../../catalogue/index.ts";
import { type Cells, isSlug, ownCopy, readLabel, readText, slugOf } from "./cells.ts";
import { createGrowable } from "./growable.ts";

/** A machine that the feed names by its full code. `code` as printed, `key` as `normaliseCode` gives it. */
export type CollectedModel = { code: string; key: string; brand: string; machine: string };

/** What a shop's feed may leave out, because all of its machines are alike in it. */
export type ModelDefaults = { brand: string; machine: string };

/** Reads and keeps the models of a feed. */
export type ModelStore = {
  readonly all: CollectedModel[];
  /** @returns the model's index, and −1 where the row cannot be used, which is told */
  take(cells: Cells): number;
  /** The index of a model that stands in the feed as it is written, and whose brand and machine are the same. */
  known(raw: string, brand: string, machine: string): number;
  /** Lets go of what only reading needs. */
  close(): void;
};

/** Of two rows with the same code the first tells brand and machine. */
export function createModelStore(): ModelStore {
  const all: CollectedModel[] = [];
  const lines = createGrowable();
  const byCode = new Map<string, number>();
  const words = new Map<string, string>();

  /** The same few brands and machines stand in a million rows. */
  function shared(text: string): string {
    const known = words.get(text);
    if (known !== undefined) return known;
    const own = ownCopy(text);
    words.set(own, own);
    return own;
  }

  function enter(cells: Cells, code: string, brand: string, machine: string): number {
    const read = normaliseCode(code);
    if (read.kind === "unreadable") {
      cells.problem("bad-model", "model", `"${code}" is nothing that anybody could type as a model code.`);
      return -1;
    }
    const own = ownCopy(code);
    const key = read.code === own ? own : read.code;
    byCode.set(own, all.length);
    lines.push(cells.line);
    return all.push({ code: own, key, brand: shared(brand), machine: shared(machine) }) - 1;
  }

  function readMachine(cells: Cells): string {
    const written = cells.raw("machine").trim();
    const machine = slugOf(written);
    if (machine !== written)
      cells.problem(
        "bad-machine",
        "machine",
        machine ? `Write the machine as "${machine}".` : "Write the machine in small letters and hyphens.",
      );
    return isSlug(machine) ? machine : "";
  }

  return {
    all,
    known(raw, brand, machine) {
      const index = byCode.get(raw);
      if (index === undefined) return -1;
      const model = all[index];
      return model?.brand === brand && model.machine === machine ? index : -1;
    },
    take(cells) {
      const code = readLabel(cells, "model", "bad-model");
      const brand = readText(cells, "brand");
      if (code === null || brand === null) return -1;
      if (brand.length > 80) {
        cells.problem("bad-model", "brand", "The brand is longer than 80 characters.");
        return -1;
      }
      const index = byCode.get(code);
      const model = all[index ?? -1];
      if (index === undefined || !model) return enter(cells, code, brand, readMachine(cells));
      if (model.brand !== brand && model.brand !== "" && brand !== "") {
        cells.problem(
          "brand-conflict",
          "brand",
          `${code} is a machine of ${model.brand} in line ${lines.at(index)}. This row is left out: a part for one does not fit the other.`,
        );
        return -1;
      }
      const machine = readMachine(cells);
      if (model.machine !== machine && model.machine !== "" && machine !== "")
        cells.problem(
          "machine-conflict",
          "machine",
          `${code} is "${model.machine}" in line ${lines.at(index)}; the first one counts.`,
        );
      // Some feeds tell brand and machine in one row of a model only.
      if (model.brand === "") model.brand = shared(brand);
      if (model.machine === "") model.machine = shared(machine);
      return index;
    },
    close: () => byCode.clear(),
  };
}

/**
 * For each model the one that it is: of codes of one brand that differ by separators and case only, the first. With
 * another brand they are two machines, and a person who types the code is asked which.
 */
export function mergeTwins(models: readonly CollectedModel[]): Uint32Array {
  const first = new Map<string, number>();
  const twins = new Map<string, number>();
  return Uint32Array.from(models, ({ key, brand }, index) => {
    const known = first.get(key);
    if (known === undefined) first.set(key, index);
    if (known === undefined || models[known]?.brand === brand) return known ?? index;
    const own = `${key}\0${brand}`;
    const twin = twins.get(own) ?? index;
    twins.set(own, twin);
    return twin;
  });
}
