import type { Plugin } from "vite";
import { parse } from "yaml";

/** Lets a YAML file be imported as plain data; a malformed or doubled key stops the build. */
export function yamlPlugin(): Plugin {
  return {
    name: "yaml",
    transform(source, id) {
      if (!id.endsWith(".yaml")) return;
      const data = parse(source, { strict: true, uniqueKeys: true });
      return { code: `export default ${JSON.stringify(data)}`, map: null };
    },
  };
}
