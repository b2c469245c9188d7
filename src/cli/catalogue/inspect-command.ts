import { UnusableFeed } from "../../workbench/feed/index.ts";
import { type FileTools, reasonOf } from "../../workbench/own-files/index.ts";
import { inspectFeed } from "../../workbench/shop-feed/index.ts";
import { inspectJson } from "./inspect-json.ts";
import { inspectLines } from "./inspect-lines.ts";
import { readShop, type ShopFeed } from "./shop-files.ts";

/**
 * `fridgeside catalogue inspect <feed>`: says how a shop's own feed is understood, and what can be used of it.
 * @param write where the mapping goes; a file that is there already stays
 * @param isJson for a program: one object, and nothing else
 * @param kinds of the trade
 * @returns exit code 0 where a build could use some of it, 1 where it could not
 */
export function inspectCommand(
  shop: ShopFeed,
  { write, json: isJson }: { write?: string | undefined; json?: boolean },
  kinds: readonly string[],
  files: FileTools,
  print: (line: string) => void,
): number {
  try {
    const tables = readShop(shop, files);
    const inspection = inspectFeed(tables, shop.said, kinds);
    if (isJson) print(JSON.stringify(inspectJson(tables, inspection), null, 2));
    else for (const line of inspectLines(tables, inspection)) print(line);
    if (write !== undefined) {
      const text = `${JSON.stringify(inspection.guess.mapping, null, 2)}\n`;
      files.writeFileSync(write, text, { flag: "wx" });
      if (!isJson) print(`Written: ${write}. Change what is wrong in it, then build with --mapping ${write}`);
    }
    return inspection.fitments > 0 ? 0 : 1;
  } catch (fault) {
    print(fault instanceof UnusableFeed ? fault.message : reasonOf(fault));
    return 1;
  }
}
