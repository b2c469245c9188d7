import { firstSheet } from "../../panel/frame/index.ts";
import colours from "../../panel/frame/later-colours.css?inline";
import path from "../../panel/pictures/ice-path.css?inline";
import own from "./desk.css?inline";

export { Desk } from "./desk.tsx";
export type { DeskProps } from "./props.ts";
/** The rules of the desk, after those of the panel whose look it has. */
export const deskSheets = [firstSheet, colours, path, own];
