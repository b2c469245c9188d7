/** A command as a page of the guide shows it, with the name of the page. */
export type DocumentedCommand = { page: string; command: string };

/** Every line of every `sh` block of a page, without its comment. */
export function commandsOf(page: string, text: string): DocumentedCommand[] {
  return [...text.matchAll(/^```sh\n([\s\S]*?)^```/gm)]
    .flatMap(([, block = ""]) => block.split("\n"))
    .map((line) => line.replace(/\s+#.*$/, "").trim())
    .filter(Boolean)
    .map((command) => ({ page, command }));
}

/** Where the links of a page lead within the project, without what stands behind a `#`. */
export function linksOf(text: string): string[] {
  return [...text.matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, link = ""]) => link.split("#")[0] as string)
    .filter((link) => link && !/^[a-z]+:/.test(link));
}
