import { fileURLToPath } from "node:url";
import { brotliCompressSync } from "node:zlib";
import { build, type Rolldown } from "vite";
import { expect, test } from "vitest";
import { budget } from "../../bench/goals.ts";

const part = fileURLToPath(new URL("phone-part.ts", import.meta.url));

test(`what a phone needs of the live-help client has ${budget.live} bytes of brotli at most`, async () => {
  const made = (await build({
    logLevel: "silent",
    configFile: false,
    build: {
      write: false,
      minify: true,
      lib: { entry: part, formats: ["es"] },
      // A phone that asks for a person has the session, with the engine.
      rolldownOptions: { external: /\/session\/index\.ts$/, output: { minify: true, comments: false } },
    },
  })) as Rolldown.RolldownOutput[];
  const built = made.flatMap(({ output }) => output.map((one) => ("code" in one ? one.code : ""))).join("");
  // Where the session lies here is no part of it.
  const code = built.replace(/^import[^;]*;/, "");
  expect(code).toContain("welcome");
  expect(code).not.toContain("ZodMini");
  expect(brotliCompressSync(code).length).toBeLessThanOrEqual(budget.live);
});
