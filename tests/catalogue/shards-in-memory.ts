import { normaliseCode } from "../../src/catalogue/index.ts";
import { createShardedCatalogue, type Manifest } from "../../src/catalogue/shards/index.ts";
import type { Collected } from "../../src/workbench/feed/index.ts";
import { type Fill, layOut } from "../../src/workbench/shards/index.ts";

const part = {
  kind: "ice-bin",
  name: "Ice bin",
  price: { minor: 900, currency: "GBP" },
  stock: "in-stock" as const,
};

/** A feed of these codes; each model takes a bin of its own. */
export function collect(codes: readonly string[]): Collected {
  return {
    models: codes.map((code) => {
      const read = normaliseCode(code);
      if (read.kind === "unreadable") throw new Error(`"${code}" is no code`);
      return { code, key: read.code, brand: "Nettlewick", machine: "french-door" };
    }),
    parts: codes.map((code) => ({ ...part, number: `bin-${code}` })),
    offsets: Uint32Array.from({ length: codes.length + 1 }, (_, at) => at),
    partOf: Uint32Array.from(codes, (_, at) => at),
    conditions: new Map(),
  };
}

/** Lays a feed out and reads it back from memory; `asked` are the paths in the order of asking. */
export function shardsOf(collected: Collected, fill?: Fill) {
  const { manifest, files } = layOut(collected, (text) => text.length, fill);
  const written = new Map([...files].map(({ path, text }) => [path, text]));
  const asked: string[] = [];
  const read = async (path: string) => {
    asked.push(path);
    return JSON.parse(written.get(path) ?? "null");
  };
  const whole: Manifest = { ...manifest, folder: "c-1" };
  return { shop: createShardedCatalogue(whole, read), manifest: whole, written, asked };
}
