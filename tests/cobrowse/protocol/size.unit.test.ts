import { fileURLToPath } from "node:url";
import { brotliCompressSync } from "node:zlib";
import { build, type Rolldown } from "vite";
import { expect, test } from "vitest";

const door = fileURLToPath(new URL("../../../src/cobrowse/protocol/index.ts", import.meta.url));

test("what a phone needs of the protocol, all of it, has 3 kB of brotli at most and checks nothing by schemas", async () => {
  const made = (await build({
    logLevel: "silent",
    configFile: false,
    build: { write: false, minify: true, lib: { entry: door, formats: ["es"] } },
  })) as Rolldown.RolldownOutput[];
  const code = made.flatMap(({ output }) => output.map((one) => ("code" in one ? one.code : ""))).join("");
  expect(code).toContain("welcome");
  expect(code).not.toContain("ZodMini");
  expect(brotliCompressSync(code).length).toBeLessThanOrEqual(3000);
});
