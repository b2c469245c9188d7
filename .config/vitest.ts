import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";
import { yamlPlugin } from "./yaml-plugin.ts";

/** What the build makes of flows/ for the file that only some shops load; its tests hand in their own. */
const noDangers: Plugin = {
  name: "no-dangers",
  resolveId: (id) => (id === "virtual:dangers" ? id : null),
  load: (id) =>
    id === "virtual:dangers" ? "export const knownDangers = { hazards: {}, access: {}, stations: {} }" : null,
};

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  plugins: [yamlPlugin(), noDangers],
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
