import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname } from "node:path";
import { brotliCompressSync } from "node:zlib";
import { strictPolicy } from "../../demo/serve/serve-folders.ts";
import type { Files } from "./built.ts";

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
};

/** Serves files as brotli, packed beforehand, so that what travels is what is counted. */
export async function serveFiles(files: Files): Promise<{ address: string; close(): void }> {
  const packed = new Map([...files].map(([name, content]) => [`/${name}`, brotliCompressSync(content)]));
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://localhost").pathname;
    const body = packed.get(path);
    if (!body || !request.headers["accept-encoding"]?.includes("br")) {
      response.writeHead(body ? 406 : 404).end();
      return;
    }
    response
      .writeHead(200, {
        "content-type": types[extname(path)] ?? "application/octet-stream",
        "content-encoding": "br",
        "content-length": body.length,
        "content-security-policy": strictPolicy,
      })
      .end(body);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}/`, close: () => server.close() };
}
