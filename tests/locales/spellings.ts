/**
 * Words that only one side of the Atlantic uses, as the householder would. Common usage, no source.
 * Each is matched as a whole word, with or without a plural s.
 */
export const onlyBritish = [
  ...["stop tap", "tap", "fridge", "torch", "spanner", "socket", "mains", "consumer unit", "fuse box"],
  ...["jug", "kettle", "washing-up", "tea towel", "kitchen roll", "cool bag", "cool box", "worktop", "kerb"],
  ...["engineer", "fire service", "fire brigade", "gas emergency service", "shop", "holiday", "power cut"],
  ...["anticlockwise", "afterwards", "whilst", "for ever", "draught", "fitted", "fit it", "way round"],
  ...["stopcock", "isolating valve", "spray nozzle", "push-fit", "extension lead", "cotton bud", "spilt"],
  ...[
    "vacuum cleaner",
    "kitchen scales",
    "fluff",
    "your basket",
    "my basket",
    "mended",
    "autumn",
    "all round",
  ],
  ...["mould", "colour", "grey", "litre", "millilitre", "metre", "centre", "aluminium", "licence", "odour"],
];

export const onlyAmerican = [
  ...["main shut-off", "saddle valve", "household current", "aerator", "breaker", "push-in", "power outage"],
  ...["cotton swab", "spilled", "lint", "a kitchen scale", "receipt", "cart", "store", "pitcher", "dump"],
  ...["shut-off valve", "faucet", "refrigerator", "flashlight", "wrench", "outlet", "breaker panel"],
  ...["measuring cup", "dish soap", "dish towel", "paper towel", "cooler", "counter", "curb", "trash"],
  ...["technician", "fire department", "vacation", "power outage", "gasket"],
  ...["counterclockwise", "forever", "toward", "gotten", "install", "installed"],
  ...[
    "mold",
    "color",
    "gray",
    "liter",
    "milliliter",
    "meter",
    "center",
    "aluminum",
    "odor",
    "gallon",
    "quart",
  ],
];

/** The words of a list that a text uses; a screen is tapped on both sides. */
export function findWords(text: string, words: string[]): string[] {
  const read = text.replace(/\btap (it|one|“)/gi, "");
  return words.filter((word) => new RegExp(`\\b${word}s?\\b`, "i").test(read));
}
