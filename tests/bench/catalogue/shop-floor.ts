import { readFileSync } from "node:fs";
import { decode, readTable } from "../../../src/workbench/shop-feed/index.ts";

/** A process of its own: reads the shop's feed that is named as a table, as the commands do, and does nothing with it. */

const { rows, bad } = readTable(decode(readFileSync(process.argv[2] ?? "")).text);
console.log(JSON.stringify({ rows: rows.length, bad: bad.length }));
