import { firstSheet } from "../../panel/frame/index.ts";
import own from "./desk.css?inline";

export { Desk } from "./desk.tsx";
export type { DeskProps } from "./props.ts";
/** The rules of the desk, after those of the panel whose look it has. */
export const deskSheets = [firstSheet, own];
