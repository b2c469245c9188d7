export { type Fill, type LaidOut, layOut } from "./lay-out.ts";
