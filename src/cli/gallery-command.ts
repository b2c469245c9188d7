import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { dirname, extname, join, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { buildEmbed, comesBuilt, distFolder } from "../workbench/build/index.ts";
import { reasonOf } from "../workbench/own-files/index.ts";
import { ownProcess, portIn, type Serving, serveUntilStopped } from "./serving.ts";

const demoFolder = fileURLToPath(new URL("../../demo", import.meta.url));

/** What a page of the gallery, the script or a shop's stylesheet may fetch, with the type it is served as. */
const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".webp": "image/webp",
  ".wasm": "application/wasm",
  ".woff": "font/woff",
  ".woff2": "font/woff2",
  ".ttf": "font/ttf",
};

/** Of what lies beside a shop's stylesheet nothing else is served: other rules, fonts and pictures. */
const beside = [".css", ".svg", ".png", ".jpg", ".webp", ".woff", ".woff2", ".ttf"];

type Means = Partial<Serving> & { build?: typeof buildEmbed };

/**
 * `fridgeside gallery [--style shop.css] [--words words.json] [--port 4174]`: serves every turn of the panel on this machine,
 * in a shop's own rules and words, until it is stopped.
 * @returns exit code 0, 1 where the port is taken or the script can't be built, 2 for unusable options
 */
export async function galleryCommand(
  args: string[],
  { build = buildEmbed, ...serving }: Means = {},
): Promise<number> {
  const options = {
    style: { type: "string" },
    words: { type: "string" },
    port: { type: "string", default: "4174" },
  } as const;
  const { style, words, port: typed } = parseArgs({ args, options }).values;
  for (const [name, path] of Object.entries({ style, words }))
    if (path !== undefined && !isFile(path)) {
      console.error(`--${name}: "${path}" is no file`);
      return 2;
    }
  const port = portIn(typed);
  if (port === null) {
    console.error(`--port: "${typed}" is no port`);
    return 2;
  }
  try {
    if (!comesBuilt()) await build();
    const server = createServer((request, response) => {
      const path = pathOf(request.url ?? "/");
      if (path === "/") return void response.writeHead(302, { location: "/gallery/" }).end();
      const file = fileOf(path, { style, words });
      if (!file) return void response.writeHead(404, { "content-type": "text/plain" }).end("Not found");
      const type = types[extname(file)] ?? "application/octet-stream";
      // Read anew each time: a shop edits its rules and reloads the page.
      response.writeHead(200, { "content-type": type, "cache-control": "no-cache" });
      createReadStream(file)
        .on("error", () => response.destroy())
        .pipe(response);
    });
    const says = (address: string) => `Every turn is at ${address}gallery/ (Ctrl+C stops)`;
    await serveUntilStopped(server, port, "127.0.0.1", says, { ...ownProcess, ...serving });
    return 0;
  } catch (fault) {
    console.error(`The gallery can't be shown. ${reasonOf(fault)}`);
    return 1;
  }
}

/** A request's path without its query; "" where it can't be read. */
function pathOf(url: string): string {
  try {
    return decodeURIComponent(new URL(url, "http://localhost").pathname);
  } catch {
    return "";
  }
}

/** Where a path's file lies; null for one that is none of the gallery's. */
function fileOf(
  path: string,
  { style, words }: Partial<Record<"style" | "words", string | undefined>>,
): string | null {
  if (path === "/gallery/own.css" && style) return style;
  if (path === "/gallery/own.json" && words) return words;
  const name = path.endsWith("/") ? `${path}index.html` : path;
  const places = [
    ...(name.startsWith("/gallery/") || /^\/(catalogue\.json|icon\.svg)$/.test(name)
      ? [within(demoFolder, name)]
      : []),
    within(distFolder, name),
    ...(style && beside.includes(extname(name))
      ? [within(dirname(style), name.replace("/gallery/", "/"))]
      : []),
  ];
  return places.find((file) => file !== null && isFile(file)) ?? null;
}

/** A file below a folder; null for a path that leads out of it. */
function within(folder: string, path: string): string | null {
  const root = resolve(folder);
  const file = join(root, path);
  return file.startsWith(root + sep) && !path.includes("\0") ? file : null;
}

function isFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
