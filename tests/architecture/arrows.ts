/** What a part of src/ may import, and why no more. */
export type Arrow = { to: string[]; because: string };

const pureParts = [
  "condition",
  "measuring",
  "instruments",
  "diagnosis",
  "catalogue",
  "plate",
  "guide",
  "chart",
  "advice",
  "session",
  "understanding",
  "turn",
  "care",
  "pack",
  "insight",
];

/** Pure, and run by a build or a command only. */
const compiler = "compile";
const trainer = "training";

/** Tools that need no file system of their own: what they read and write is handed to them. */
const pureTools = [
  "workbench/verify",
  "workbench/draw",
  "workbench/feed",
  "workbench/shards",
  "workbench/pictures",
  "workbench/insight",
  "workbench/learn",
];

/** The arrows of the design, one entry a part. Whatever is not named here is forbidden. */
export const arrows: Record<string, Arrow> = {
  condition: {
    to: [],
    because: "it is the one vocabulary that everybody else reads conditions by",
  },
  measuring: {
    to: [],
    because:
      "it is what instruments share and stands alone, so that its numbers can be held against handbooks",
  },
  instruments: {
    to: ["measuring"],
    because: "a reading is judged by its limits alone, whichever turn, session or screen it comes from",
  },
  diagnosis: {
    to: ["measuring"],
    because:
      "it advises from verdicts; what is allowed is the chart's business, which asks it and not the reverse",
  },
  catalogue: {
    to: [],
    because: "it knows a shop's parts and nothing of how they were found to be needed",
  },
  plate: {
    to: ["catalogue"],
    because: "it reads a picture that it is given, and knows of no camera, file or screen",
  },
  guide: {
    to: ["condition", "instruments", "measuring"],
    because: "it is the shape of what flows/ says, and everybody who reads flows/ stands on it",
  },
  chart: {
    to: ["condition", "guide", "instruments"],
    because: "what is allowed must hold whatever is advised, and be proved without a session or a screen",
  },
  advice: {
    to: ["chart", "condition", "diagnosis"],
    because: "it reads what the chart remembers and says what is best next; it never allows",
  },
  compile: {
    to: ["care", "session", "advice", "chart", "condition", "guide", "diagnosis", "instruments", "measuring"],
    because: "it makes charts and models of flows/ alone, so that a build can do it once for everybody",
  },
  session: {
    to: ["advice", "chart", "guide", "instruments", "measuring", "catalogue"],
    because: "it turns a log into a state; a screen or a host page would tie every replay to one device",
  },
  understanding: {
    to: ["instruments", "measuring"],
    because: "what a sentence means is known by its words and the turn's answers alone; nobody is asked",
  },
  training: {
    to: ["understanding"],
    because: "it makes a model of phrases alone, by the very features that a phone reads sentences by",
  },
  turn: {
    to: ["session", "understanding", "chart", "guide", "instruments", "measuring", "catalogue"],
    because: "it says in plain data what a screen shows, so that any screen or none can show it",
  },
  care: {
    to: ["turn", "session", "chart", "condition", "guide", "instruments", "measuring"],
    because: "it is what is said and kept after an ending, of a search that has ended and of no screen",
  },
  pack: {
    to: ["turn", "session", "advice", "chart", "condition", "guide", "diagnosis", "instruments"],
    because:
      "it judges compiled flows that came from elsewhere before a phone runs them, and composes nothing",
  },
  "panel/frame": {
    to: ["turn"],
    because: "it is in the first file, which has to be small",
  },
  "panel/screens/reading": {
    to: ["panel/frame", "turn", "measuring"],
    because: "it is what the screens of instruments share, and knows none of them",
  },
  "screens of instruments": {
    to: ["instruments", "measuring", "panel/frame", "panel/screens/reading", "turn"],
    because: "a screen of an instrument is put together from pieces, and shown by the panel",
  },
  panel: {
    to: ["panel/frame", "panel/screens/reading", "screens of instruments", "turn", "measuring"],
    because: "a screen sees a plain Turn, never the chart, so that either can change without the other",
  },
  "cobrowse/protocol/room": {
    to: ["cobrowse/protocol"],
    because: "it is what the relay decides; a phone has neither use nor room for it",
  },
  "cobrowse/protocol": { to: [], because: "both ends and the relay speak it, on whatever they run" },
  "cobrowse/client": {
    to: ["cobrowse/protocol", "session"],
    because: "it carries a log from one device to another and draws nothing",
  },
  "cobrowse/relay": {
    to: ["cobrowse/protocol", "cobrowse/protocol/room"],
    because: "the relay never reads what it carries, so it must not know what a session is",
  },
  insight: {
    to: [],
    because: "it is the shape of what a phone sends and a command reads, and neither may bring more along",
  },
  loading: {
    to: ["catalogue", "chart", "pack", "panel", "session", "turn"],
    because: "the panel and the desk fetch the same files, and neither may know the other",
  },
  "desk/board": {
    to: ["cobrowse/client", "turn", "session", "advice", "chart", "guide"],
    because:
      "it says in plain data what a room comes to for an agent, so that a test can hold it without a screen",
  },
  desk: {
    to: [
      ...["desk/board", "loading", "cobrowse/client", "cobrowse/protocol", "turn", "session", "chart"],
      ...["panel", "panel/frame", "panel/screens/reading", "screens of instruments"],
    ],
    because:
      "it reads what a householder shares and suggests; with a session of its own, or the panel's embed, it could act",
  },
  embed: {
    to: [
      ...pureParts,
      "loading",
      "panel",
      "screens of instruments",
      "panel/frame",
      "cobrowse/client",
      "cobrowse/protocol",
    ],
    because:
      "it is what a browser loads; a file system, a server, a tool of the workbench or what composes flows has no place there",
  },
  "workbench/verify": {
    to: ["compile", "chart", "condition", "guide", "instruments", "workbench/pictures"],
    because: "it judges flows/ and runs nothing",
  },
  "workbench/insight": {
    to: ["insight"],
    because: "it counts and draws what lines say, and knows of no flow and no file",
  },
  "workbench/learn": {
    to: ["compile", "guide", "insight"],
    because: "it weighs what was found against what flows/ judges, and changes nothing itself",
  },
  "workbench/pictures": { to: [], because: "it makes shapes out of numbers, and knows of no flow" },
  "workbench/draw": {
    to: ["compile", "chart", "condition", "guide", "instruments"],
    because: "it draws what was composed",
  },
  "workbench/feed": { to: ["catalogue"], because: "it reads a shop's feed, and knows of no fault" },
  "workbench/shards": {
    to: ["catalogue", "workbench/feed"],
    because: "it lays out what a feed has given for those who look it up",
  },
  "workbench/shop-feed": {
    to: ["catalogue", "condition", "workbench/feed"],
    because: "it makes a shop's own columns ours, and hands them to who reads ours",
  },
  "workbench/own-files": { to: [], because: "it writes files for any command, whatever they are" },
  "workbench/build": {
    to: [...pureParts, compiler, trainer, "workbench/verify", "workbench/pictures", "workbench/own-files"],
    because: "it makes what a browser loads, and draws no screen",
  },
  "workbench/play": {
    to: [...pureParts, compiler],
    because:
      "a session driven by lines is one like any other, and needs nothing of the machine that it runs on",
  },
  "workbench/manifest": {
    to: [],
    because: "it says in another form what a page says, and knows nothing else",
  },
  package: {
    to: ["catalogue", "insight", "workbench/build", "workbench/play"],
    because: "it is what others import: a way in, and nothing of its own",
  },
  cli: {
    to: [
      ...pureParts,
      compiler,
      ...pureTools,
      "workbench/build",
      "workbench/play",
      "workbench/own-files",
      "workbench/shop-feed",
      "cobrowse/protocol",
      "cobrowse/relay",
    ],
    because: "it runs in a terminal, where there is no screen to draw on",
  },
};

/** The packages that src/ may use, the parts that may use them, and why only those. */
export const packages: Record<string, Arrow> = {
  xstate: {
    to: ["session"],
    because: "nobody else sees a chart; a screen that knew one would hold state of its own",
  },
  preact: {
    to: ["panel", "panel/frame", "panel/screens/reading", "screens of instruments", "desk", "embed"],
    because: "only what draws may know how it is drawn",
  },
  uqr: { to: ["embed"], because: "a code is drawn of a link alone, in a file that comes with it" },
  i18next: { to: ["turn"], because: "everybody else is handed texts, and so needs no language" },
  "zod/mini": {
    to: [
      ...[
        "condition",
        "guide",
        "instruments",
        "pack",
        "session",
        "catalogue",
        "cobrowse/protocol/room",
        "insight",
        "embed",
      ],
      ...["workbench/verify", "workbench/build", "workbench/own-files", "workbench/shop-feed", "cli"],
    ],
    because: "what comes from outside is parsed at the door, and these are the doors",
  },
  yaml: {
    to: ["workbench/build", "cli"],
    because: "the browser gets plain data; its parser would be half of the script's budget",
  },
  "fastest-levenshtein": {
    to: ["workbench/verify"],
    because: "who edits a file is offered the nearest name; a phone has nothing to offer",
  },
  vite: { to: ["workbench/build", "cli"], because: "it builds the script and is no part of it" },
  "magic-string": { to: ["workbench/build"], because: "only the build rewrites script" },
  "@jridgewell/remapping": { to: ["workbench/build"], because: "only the build makes source maps" },
  saxes: { to: ["workbench/shop-feed"], because: "XML comes from shops alone" },
  entities: { to: ["workbench/shop-feed"], because: "only a shop's export has them in its texts" },
  "iconv-lite": { to: ["workbench/shop-feed"], because: "everybody else reads UTF-8" },
  fflate: { to: ["workbench/shop-feed"], because: "only a shop's feed comes in a zip file" },
  sirv: { to: ["cli"], because: "only a command serves a folder; a phone is served" },
  ws: { to: ["cobrowse/relay"], because: "browsers bring a web socket of their own" },
  pino: { to: ["cobrowse/relay"], because: "only a server keeps a log of what it does" },
  ioredis: { to: ["cobrowse/relay"], because: "only several relays have to share what they keep" },
  "node:": {
    to: ["workbench/build", "workbench/own-files", "workbench/shop-feed", "cli", "package", "cobrowse/relay"],
    because: "the rest runs in a browser, where there is no file system, process or server",
  },
  "virtual:": {
    to: ["loading", "desk", "embed", "workbench/build"],
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

export const pure = [
  ...pureParts,
  compiler,
  trainer,
  ...pureTools,
  "cobrowse/protocol",
  "cobrowse/protocol/room",
  "desk/board",
];
