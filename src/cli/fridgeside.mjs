#!/usr/bin/env node
// The package has the command as plain JavaScript; in the project it is TypeScript, which tsx lets Node read as it is.
import { existsSync } from "node:fs";

const source = new URL("./main.ts", import.meta.url);
if (existsSync(source)) {
  const { register } = await import("tsx/esm/api");
  register();
  await import(source.href);
} else {
  await import("../../lib/cli/main.js");
}
