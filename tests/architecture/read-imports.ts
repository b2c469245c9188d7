/** One module that a source file names, however it does so: import, export from, import type, or import(). */
export type Import = { from: string; clause: string };

/**
 * Comments, string, template and pattern literals, in this order of trying. A slash starts a pattern only where a
 * value may stand; strings end with their line, so that an apostrophe in running text costs no more than its line.
 */
const literals =
  /\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`|(?<=[(,=:[!&|?{};]\s*)\/(?![*/])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+\/[a-z]*/g;

/** The source without comments and patterns, with each string replaced by its number in quotes. */
function splitStrings(source: string): { code: string; strings: string[] } {
  const strings: string[] = [];
  const code = source.replace(literals, (literal) => {
    if (literal.startsWith("/")) return " ";
    return `"${strings.push(literal.slice(1, -1)) - 1}"`;
  });
  return { code, strings };
}

/** The source with every comment, string and pattern blanked: what is left is what the program does. */
export function codeOf(source: string): string {
  return splitStrings(source).code.replace(/"\d+"/g, '""');
}

/**
 * Every module that a TypeScript file names, type-only ones included. TypeScript 7 has no parser to ask and a
 * JavaScript one no longer sees the types, so this reads the few forms that an import can have.
 */
export function readImports(source: string): Import[] {
  const { code, strings } = splitStrings(source);
  const forms = [
    /\bimport\s+(?<clause>[\w*{][^"();]*?)\s*\bfrom\s*"(?<at>\d+)"/g,
    /\bexport\s+(?<clause>(?:type\s*)?[*{][^"();]*?)\s*\bfrom\s*"(?<at>\d+)"/g,
    /\bimport\s*(?<clause>)"(?<at>\d+)"/g,
    /\bimport\s*\(\s*(?<clause>)"(?<at>\d+)"/g,
  ];
  return forms.flatMap((form) =>
    [...code.matchAll(form)].map(({ groups }) => ({
      from: strings[Number(groups?.at)] ?? "",
      clause: groups?.clause ?? "",
    })),
  );
}
