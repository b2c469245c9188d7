import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import sirv from "sirv";

/**
 * The demo shop's policy, as strict as a careful shop's: own scripts and styles only, no inline code, and no text
 * ever turned into markup or code (Trusted Types).
 */
export const strictPolicy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
  "base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types 'none'";

/** What a page of the demo is let do besides, by its path. */
const exceptions: Record<string, string> = {
  // The worker that reads a photo of the plate starts from a text that a policy of its own has passed.
  "/photo.html": strictPolicy.replace("trusted-types 'none'", "trusted-types fridgeside-plate"),
  // A tag manager makes script tags of texts, which Trusted Types forbid.
  "/ways/tag-manager.html": strictPolicy.replace(/; require-trusted-types.*/, ""),
  "/ways/no-storage.html": `${strictPolicy}; frame-src 'self'`,
};

/** The same as the strict one, with leave to talk to a relay on this very machine, at whichever port. */
const livePolicy = strictPolicy.replace("connect-src 'self'", "connect-src 'self' ws://127.0.0.1:*");

/** The same, with leave to show pages of its own in frames. */
const galleryPolicy = `${strictPolicy}; frame-src 'self'`;

/** Pages of the demo that a relay is on. */
const livePages = ["/", "/index.html", "/desk.html"];

/** For the files of that worker, which run apart from any page: WebAssembly, and nothing from elsewhere. */
const platePolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";

/**
 * Serves folders as one static site; the first that has a file wins. Files are read when they are asked for, so a
 * build is seen at once.
 * @param answers what is said at addresses that are no file, as plain text, made anew for each request
 * @param pageAt a page that stands in place of a file, by its path; null for none
 * @returns the server and the address it listens at; port 0 takes any free one
 * @throws Error where the port is taken
 */
export async function serveFolders(
  folders: string[],
  port: number,
  answers: ReadonlyMap<string, () => string> = new Map(),
  pageAt: (path: string) => string | null = () => null,
): Promise<{ server: Server; address: string }> {
  const sites = folders.map((folder) =>
    sirv(folder, {
      dev: true,
      etag: true,
      setHeaders(response, path) {
        response.setHeader("content-security-policy", policyOf(path));
        response.setHeader("access-control-allow-origin", "*");
        if (isNamedByContent(path))
          response.setHeader("cache-control", "public, max-age=31536000, immutable");
      },
    }),
  );
  const server = createServer((request, response) => {
    const answer = answers.get(request.url ?? "");
    if (answer) {
      response.writeHead(200, { "content-type": "text/plain", "cache-control": "no-store" }).end(answer());
      return;
    }
    const page = pageAt(request.url?.replace(/[?#].*/, "") ?? "");
    if (page !== null) {
      const headers = { "content-type": "text/html;charset=utf-8", "cache-control": "no-cache" };
      response.writeHead(200, { ...headers, "content-security-policy": strictPolicy }).end(page);
      return;
    }
    const serveFrom = (place: number): void => {
      const site = sites[place];
      if (site) site(request, response, () => serveFrom(place + 1));
      else response.writeHead(404, { "content-type": "text/plain" }).end("Not found");
    };
    // sirv throws at a range that ends before it starts, and no page here asks for a part of a file.
    delete request.headers.range;
    serveFrom(0);
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

function policyOf(path: string): string {
  if (path.startsWith("/plate/")) return platePolicy;
  if (livePages.includes(path)) return livePolicy;
  if (path.startsWith("/gallery/")) return galleryPolicy;
  return exceptions[path] ?? strictPolicy;
}

/** Parts of the script, what reads plates and folders of a catalogue never change their content; a browser asks again for the rest. */
function isNamedByContent(path: string): boolean {
  return /^\/(parts|plate)\/|\/c-[0-9a-f]{12}\//.test(path);
}
