import { createHash } from "node:crypto";
import type { OwnFile } from "../own-files/index.ts";
import { firstFileOf } from "./chunks.ts";

/** A first file under a name that is its content's: for pages that name a hash, which a new build must not break. */
export const pinnedName = /^fridgeside\.[\w-]+\.[0-9a-f]{8}\.js$/;

/**
 * Hashes of every file of a build, and what a shop pastes to have its browsers check them (W3C, Subresource Integrity;
 * for what a script loads, the HTML Standard's import maps). Data is fetched and has no place there.
 * @param files as `bundleEmbed` makes them
 * @param languages with a first file each, the fallback first
 * @returns a copy of each first file under a pinned name, `integrity.json` and `to-paste.html`
 */
export function integrityFiles(files: readonly OwnFile[], languages: readonly string[]): OwnFile[] {
  const pinned = files.flatMap(({ path, content }) => {
    const language = languages.find((each) => firstFileOf(each) === path);
    return language ? [{ language, path: pinnedFile(language, content), content }] : [];
  });
  const all = [...files, ...pinned].toSorted((one, other) => (one.path < other.path ? -1 : 1));
  const hashes = Object.fromEntries(all.map(({ path, content }) => [path, hashOf(content)]));
  const scripts = Object.entries(hashes).filter(([path]) => /^parts\/.*\.js$/.test(path));
  const snippets = pinned.map(({ language, path }) => snippetOf(language, path, hashes[path] ?? "", scripts));
  return [
    ...pinned.map(({ path, content }) => ({ path, content })),
    { path: "integrity.json", content: `${JSON.stringify(hashes, null, 2)}\n` },
    { path: "to-paste.html", content: snippets.join("\n") },
  ];
}

const pinnedFile = (language: string, content: OwnFile["content"]) =>
  firstFileOf(language).replace(
    /js$/,
    `${createHash("sha256").update(content).digest("hex").slice(0, 8)}.js`,
  );

const hashOf = (content: OwnFile["content"]) =>
  `sha384-${createHash("sha384").update(content).digest("base64")}`;

/** The folder's address, which the shop puts in. */
const place = "https://cdn.example/fridgeside/";

function snippetOf(
  language: string,
  path: string,
  hash: string,
  scripts: readonly (readonly [path: string, hash: string])[],
): string {
  const map = { integrity: Object.fromEntries(scripts.map(([each, its]) => [place + each, its])) };
  return `<!-- ${language}: put the folder's own address in place of ${place} -->
<script type="importmap">${JSON.stringify(map)}</script>
<script type="module" async src="${place}${path}" integrity="${hash}" crossorigin="anonymous"></script>
<fridgeside-panel></fridgeside-panel>
`;
}
