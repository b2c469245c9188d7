import { createReadStream, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { extname, join, normalize } from "node:path";

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/**
 * The demo shop's policy, as strict as a careful shop's: own scripts and styles only, no inline code, and no text
 * ever turned into markup or code (Trusted Types).
 */
export const strictPolicy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
  "base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types 'none'";

/**
 * Serves folders as one static site, the first that has a file wins.
 * @returns the server and the address it listens at; port 0 takes any free one
 */
export async function serveFolders(
  folders: string[],
  port: number,
): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    const path = pathOf(request.url ?? "/");
    const file = path && folders.map((folder) => join(folder, path)).find(isFile);
    if (!file) {
      response.writeHead(404, { "content-type": "text/plain" }).end("Not found");
      return;
    }
    const headers = {
      "content-type": types[extname(file)] ?? "application/octet-stream",
      "content-security-policy": strictPolicy,
      "access-control-allow-origin": "*",
      "cache-control": isNamedByContent(path) ? "public, max-age=31536000, immutable" : "no-cache",
      etag: tagOf(file),
    };
    if (request.headers["if-none-match"] === headers.etag) {
      response.writeHead(304, headers).end();
      return;
    }
    response.writeHead(200, headers);
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  const bound = server.address();
  const taken = typeof bound === "object" && bound ? bound.port : port;
  return { server, address: `http://127.0.0.1:${taken}/` };
}

/** Parts of the script and folders of a catalogue never change their content; all else is asked for anew. */
function isNamedByContent(path: string): boolean {
  return /^\/parts\/|\/c-[0-9a-f]{12}\//.test(path);
}

/** Changes whenever the file does. */
function tagOf(file: string): string {
  const { size, mtimeMs, ino } = statSync(file);
  return `"${[size, mtimeMs, ino].join("-")}"`;
}

/** The path that is asked for, or null where it leads out of the folder or cannot be read. */
function pathOf(url: string): string | null {
  try {
    const path = normalize(decodeURIComponent(new URL(url, "http://localhost").pathname));
    if (path.includes("..") || path.includes("\0")) return null;
    return path.endsWith("/") ? `${path}index.html` : path;
  } catch {
    return null;
  }
}

function isFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
