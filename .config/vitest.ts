import { defineConfig } from "vitest/config";
import { yamlPlugin } from "./yaml-plugin.ts";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  plugins: [yamlPlugin()],
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    pool: "forks",
    include: ["tests/**/*.unit.test.{ts,tsx}"],
  },
});
