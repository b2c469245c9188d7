import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import { yamlPlugin } from "../../../.config/yaml-plugin.ts";

/** `npx vite --config tests/panel/gallery/vite.config.ts`, then /tests/panel/gallery/?fixture=choice&theme=dark&locale=en-US */
export default defineConfig({
  root: fileURLToPath(new URL("../../..", import.meta.url)),
  plugins: [yamlPlugin()],
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  optimizeDeps: { noDiscovery: true, include: ["preact", "preact/hooks", "preact/jsx-dev-runtime"] },
  cacheDir: ".cache/gallery",
  server: { port: 5199, strictPort: false, hmr: false },
});
