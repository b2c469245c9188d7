import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { yamlPlugin } from "./yaml-plugin.ts";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  plugins: [yamlPlugin()],
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    pool: "forks",
    // One load of our modules serves all files of a worker: what tests change about the world they put back.
    isolate: false,
    // Thousands of generated cases take seconds on a small machine; a test says what is right, never how fast.
    testTimeout: 120_000,
    include: ["tests/**/*.unit.test.{ts,tsx}", "src/instruments/**/*.unit.test.{ts,tsx}"],
  },
});
