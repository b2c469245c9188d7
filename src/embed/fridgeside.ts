import { definePanel } from "./define.ts";

definePanel();
