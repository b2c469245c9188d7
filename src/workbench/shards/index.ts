export { type Fill, layOut } from "./lay-out.ts";
