import { closeSync, openSync, readSync } from "node:fs";
import { StringDecoder } from "node:string_decoder";
import { readRows } from "../../../src/catalogue/feed/index.ts";

/** A process of its own: reads and parses the feed that is named, and does nothing with it. */

function* piecesOf(path: string): Generator<string> {
  const file = openSync(path, "r");
  const decoder = new StringDecoder("utf8");
  const buffer = Buffer.alloc(1 << 18);
  for (let read = readSync(file, buffer); read > 0; read = readSync(file, buffer))
    yield decoder.write(buffer.subarray(0, read));
  yield decoder.end();
  closeSync(file);
}

const { rows, problems } = readRows(piecesOf(process.argv[2] ?? ""));
console.log(JSON.stringify({ rows, problems: problems.total }));
