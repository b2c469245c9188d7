import { defineDesk } from "./define.ts";

defineDesk();
