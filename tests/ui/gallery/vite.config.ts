import { defineConfig } from "vite";
import { yamlPlugin } from "../../../.config/yaml-plugin.ts";

/** `npx vite --config tests/ui/gallery/vite.config.ts`, then open /?fixture=choice&theme=dark&locale=en-US */
export default defineConfig({
  root: new URL("../../..", import.meta.url).pathname,
  plugins: [yamlPlugin()],
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  server: { port: 5199, strictPort: true },
  optimizeDeps: { include: ["preact", "preact/hooks"] },
  cacheDir: ".cache/gallery",
});
