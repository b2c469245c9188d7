import { readChunks } from "../../../src/cli/catalogue/index.ts";
import { readRows } from "../../../src/workbench/feed/index.ts";
import { realFiles } from "../../../src/workbench/own-files/index.ts";

/** A process of its own: reads and parses the feed that is named, as the build does, and does nothing with it. */

const { rows, problems } = readRows(readChunks(process.argv[2] ?? "", realFiles));
console.log(JSON.stringify({ rows, problems: problems.total }));
