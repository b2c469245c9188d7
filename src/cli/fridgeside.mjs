#!/usr/bin/env node
// The command line is TypeScript: tsx lets Node read it as it is.
import { register } from "tsx/esm/api";

register();
await import("./main.ts");
