/** What a part of src/ may import, and why no more. */
export type Arrow = { to: string[]; because: string };

const pureParts = ["measurement", "diagnosis", "catalogue", "flow", "session"];

/** The arrows of the design, one entry a part. Whatever is not named here is forbidden. */
export const arrows: Record<string, Arrow> = {
  measurement: {
    to: [],
    because:
      "it is arithmetic on readings and stands alone, so that its numbers can be held against handbooks",
  },
  diagnosis: {
    to: ["measurement"],
    because:
      "it advises from verdicts; what is allowed is the chart's business, which asks it and not the reverse",
  },
  catalogue: {
    to: [],
    because: "it knows a shop's parts and nothing of how they were found to be needed",
  },
  flow: {
    to: ["diagnosis", "measurement"],
    because: "the chart must be composed and proved without a session, a shop or a screen",
  },
  session: {
    to: ["flow", "diagnosis", "measurement", "catalogue"],
    because: "it turns a log into plain turns; a screen or a host page would tie every replay to one device",
  },
  ui: {
    to: ["session", "measurement"],
    because: "a screen sees a plain Turn, never the chart, so that either can change without the other",
  },
  "cobrowse/protocol": { to: [], because: "both ends and the relay speak it, on whatever they run" },
  "cobrowse/client": {
    to: ["cobrowse/protocol", "session"],
    because: "it carries a log from one device to another and draws nothing",
  },
  "cobrowse/relay": {
    to: ["cobrowse/protocol"],
    because: "the relay never reads what it carries, so it must not know what a session is",
  },
  embed: {
    to: [...pureParts, "ui", "cobrowse/client", "cobrowse/protocol"],
    because: "it is what a browser loads; a file system or a server has no place there",
  },
  cli: {
    to: [...pureParts, "cobrowse/protocol", "cobrowse/relay"],
    because: "it runs in a terminal, where there is no screen to draw on",
  },
};

/** The packages that src/ may use, the parts that may use them, and why only those. */
export const packages: Record<string, Arrow> = {
  xstate: {
    to: ["flow", "session"],
    because: "nobody else sees a chart; a screen that knew one would hold state of its own",
  },
  preact: { to: ["ui", "embed"], because: "only what draws may know how it is drawn" },
  i18next: { to: ["session"], because: "everybody else is handed texts, and so needs no language" },
  "zod/mini": {
    to: ["flow", "session", "catalogue", "cobrowse/protocol", "embed", "cli"],
    because: "what comes from outside is parsed at the door, and these are the doors",
  },
  yaml: {
    to: ["cli"],
    because: "the browser gets plain data; its parser would be half of the script's budget",
  },
  vite: { to: ["cli"], because: "it builds the script and is no part of it" },
  ws: { to: ["cobrowse/relay"], because: "browsers bring a web socket of their own" },
  "node:": {
    to: ["cli", "cobrowse/relay"],
    because: "the rest runs in a browser, where there is no file system, process or server",
  },
  "virtual:": {
    to: ["embed", "cli"],
    because:
      "what the build makes is handed to the pure parts as arguments, so that tests can hand them others",
  },
};

/** What pure parts must not touch, and what to do instead. */
export const impurities: [pattern: RegExp, because: string][] = [
  [/\bDate\.now\b|\bnew Date(?!\s*\(\s*[^)\s])|\bDate\(\s*\)|\bperformance\b/, "time comes as an argument"],
  [
    /\.(get|set)(Hours|Minutes|Date|Day|Month|FullYear|TimezoneOffset)\b/,
    "the machine's time zone is not the reader's",
  ],
  [/\bMath\.random\b|\bcrypto\b/, "chance comes as an argument: equal logs must give equal sessions"],
  [
    /\bset(Timeout|Interval)\b|\bqueueMicrotask\b|\brequest(AnimationFrame|IdleCallback)\b/,
    "the embed owns timers",
  ],
  [/\b(window|document|navigator|location|globalThis|self)\b(?!:)/, "pure parts run where there is no page"],
  [/\b(fetch|XMLHttpRequest|WebSocket)\b/, "nothing leaves the device but by the embed"],
  [/\b(local|session)Storage\b|\bindexedDB\b/, "storage is the embed's, and may be forbidden"],
  [/\bprocess\b|\brequire\b/, "pure parts run in browsers, too"],
  [/\bconsole\b/, "a problem is returned to the caller, who knows whom to tell"],
];

export const pure = [...pureParts, "cobrowse/protocol"];
