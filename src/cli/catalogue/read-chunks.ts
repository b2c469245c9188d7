import { StringDecoder } from "node:string_decoder";
import type { FileTools } from "../../workbench/own-files/index.ts";

const CHUNK_BYTES = 2 ** 20;

/**
 * A file as text, piece by piece. Bytes that are no UTF-8 become U+FFFD, which the feed's reader tells as a problem of
 * their row.
 * @param passed is told after each piece how many bytes of how many were read
 */
export function* readChunks(
  path: string,
  files: FileTools,
  passed: (bytes: number, total: number) => void = () => {},
): Generator<string> {
  const file = files.openSync(path, "r");
  try {
    const total = files.fstatSync(file).size;
    const bytes = Buffer.allocUnsafe(CHUNK_BYTES);
    const decoder = new StringDecoder("utf8");
    let sum = 0;
    for (;;) {
      const count = files.readSync(file, bytes, 0, bytes.length, null);
      if (count === 0) break;
      yield decoder.write(bytes.subarray(0, count));
      sum += count;
      passed(sum, Math.max(total, sum));
    }
    yield decoder.end();
  } finally {
    files.closeSync(file);
  }
}
