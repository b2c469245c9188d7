import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Marked, type Tokens } from "marked";

/** Pages beside `demo/docs/` that its pages link to. */
const beside = ["README.md", "DEVELOPERS.md", "src/cobrowse/PROTOCOL.md"];

/** Where an address of the demo's site leads to within the project, if to a page of the guide. */
function fileOf(path: string): string | null {
  const [, docs] = /^\/(?:demo\/)?docs\/([\w-]+\.md)$/.exec(path) ?? [];
  if (docs) return `demo/docs/${docs}`;
  return beside.find((each) => path === `/${each}`) ?? null;
}

/**
 * The guide as pages to be read in a browser, made anew each time one is asked for.
 * @param root the project's folder
 * @returns the page at a path of the site; null where there is none
 */
export function createGuidePages(root: string): (path: string) => string | null {
  return (path) => {
    const file = fileOf(path);
    if (!file || !existsSync(join(root, file))) return null;
    return pageOf(readFileSync(join(root, file), "utf8"));
  };
}

const escapeMarks = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");

/** As links to a heading have it: small letters, dashes, nothing else. */
const idOf = (heading: string) =>
  heading
    .toLowerCase()
    .replace(/[^\w\s-]/g, "")
    .trim()
    .replace(/\s+/g, "-");

const markdown = new Marked({
  renderer: {
    heading({ tokens, depth, text }: Tokens.Heading) {
      return `<h${depth} id="${idOf(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
    },
  },
});

/** A whole page of Markdown (GitHub's kind, tables too) in the demo shop's look. */
export function pageOf(text: string): string {
  const title = /^# (.+)$/m.exec(text)?.[1] ?? "The guide";
  // A wide table scrolls by itself, by keys too; the page stays as wide as the window.
  const body = (markdown.parse(text, { async: false }) as string)
    .replaceAll("<table>", '<div class="table" role="region" aria-label="Table" tabindex="0"><table>')
    .replaceAll("</table>", "</table></div>")
    .replaceAll("<pre>", '<pre tabindex="0">');
  return `<!doctype html>
<html lang="en-GB">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
    <title>${escapeMarks(title)} · Fridgeside</title>
    <link rel="icon" href="/icon.svg" />
    <link rel="stylesheet" href="/shop.css" />
    <link rel="stylesheet" href="/guide.css" />
  </head>
  <body>
    <header class="shop">
      <a class="name" href="/docs/index.md">The guide</a>
      <a href="/ways/index.html">Ways of embedding</a>
      <a href="/index.html">The demo shop</a>
    </header>
    <main class="guide">
${body}    </main>
  </body>
</html>
`;
}
