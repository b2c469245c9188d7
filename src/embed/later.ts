import { waitForSignal, whenIdle } from "../loading/pace/index.ts";
import { createBeside, type Drawings } from "../panel/pictures/index.ts";
import { createAfter, screens as soon } from "../panel/screens/index.ts";
import type { Session } from "../session/index.ts";
import type { GrowingTexts, Texts, Turn } from "../turn/index.ts";
import { bringCare } from "./care-file.ts";
import { createFile } from "./later-file.ts";
import { bringDoor } from "./open-door.ts";
import type { Options } from "./options.ts";
import type { Shop } from "./shop.ts";

/*
 * What comes after the engine, each in a file of its own: the screens of later turns, and the shop. They are fetched in
 * idle time, so that no tap waits for one and a loaded page works without a connection.
 */

type LaterFile = typeof import("./later-screens.ts");
type LaterScreens = ReturnType<LaterFile["createLaterScreens"]>;

/** After so long without a screen that is waited for, it is said that it is slow; the longest pause between two tries. */
const [SILENCE_MS, LONGEST_PAUSE_MS] = [4000, 30_000];

const getScreens = createFile<LaterFile>(
  "later-screens",
  () => import("./later-screens.ts"),
  (file) => Boolean(file.createLaterScreens),
);
let laterScreens: LaterScreens | undefined;
const getLiveScreens = createFile<typeof import("./live-screens.ts")>(
  "live-screens",
  () => import("./live-screens.ts"),
  (file) => Boolean(file.LiveBar),
);
async function bringLive(texts: Texts) {
  const { liveTexts, ...parts } = await getLiveScreens();
  (texts as GrowingTexts).add(liveTexts[texts("ui.locale")] ?? {});
  return parts;
}
const getShop = createFile<typeof import("./shop.ts")>(
  "shop",
  // It checks what a shop says by what came with the door.
  () => bringDoor().then(() => import("./shop.ts")),
  (file) => Boolean(file.openShop),
);
const getCutOpen = createFile<typeof import("./cut-open.ts")>(
  "cut-open",
  () => import("./cut-open.ts"),
  (file) => Boolean(file.CutOpen),
);

/** Kept for as long as the page lives. */
const screens: typeof soon & Partial<LaterScreens> = {
  ...soon,
  after: createAfter(createBeside(async () => (await getCutOpen()).CutOpen)),
};

type Panel = {
  /** Tells why a screen is not there yet, or null once that holds no longer. */
  say(trouble: "slow" | "lost" | null): void;
  redraw(): void;
};

/** Brings the later screens and the shop to one panel, and keeps trying where they do not come. */
export function createLater(host: HTMLElement, options: Options, { say, redraw }: Panel) {
  let isStopped = false;
  let isWaitedFor = false;
  let isBringing = false;
  let silence: ReturnType<typeof setTimeout> | undefined;
  let shop: Promise<Shop> | null = null;
  let drawAhead: ReturnType<LaterFile["createDrawingsAhead"]> | undefined;
  const openShop = () => {
    shop ??= getShop().then(
      (file) => file.openShop(host, options),
      (problem) => {
        shop = null;
        throw problem;
      },
    );
    return shop;
  };
  const get = async () => {
    const file = await getScreens();
    laterScreens ??= file.createLaterScreens(bringLive, bringCare);
    Object.assign(screens, laterScreens);
  };
  const bring = async () => {
    if (isBringing) return;
    isBringing = true;
    for (let pause = 0; !screens.ending && !isStopped; pause = Math.min(2 * pause + 1000, LONGEST_PAUSE_MS))
      await get().catch(async (problem) => {
        console.error("<fridgeside-panel>: the next screens could not be loaded; trying again.", problem);
        if (isWaitedFor && pause) say("lost");
        await waitForSignal(pause);
      });
    clearTimeout(silence);
    if (isStopped) return;
    if (isWaitedFor) say(null);
    redraw();
  };
  whenIdle(() => {
    if (isStopped) return;
    void bring();
    openShop().then(
      (opened) => opened.warmUp(),
      // It is asked for again when somebody comes to a part.
      () => {},
    );
  });
  return {
    screens,
    openShop,
    /** Waits for the screen of a kind of turn. @throws Error where it does not come */
    async waitFor(kind: Turn["kind"] | undefined): Promise<void> {
      if (isLater(kind)) await get();
    },
    /** Hears which kind of turn is on screen. */
    look(kind: Turn["kind"] | undefined): void {
      clearTimeout(silence);
      isWaitedFor = isLater(kind);
      if (!isWaitedFor) return;
      void bring();
      silence = setTimeout(() => say("slow"), SILENCE_MS);
    },
    /** Fetches the drawings that a session may come to. */
    async drawAhead(session: Session, drawings: Drawings): Promise<void> {
      const file = await getScreens().catch(() => null);
      if (isStopped) return;
      drawAhead ??= file?.createDrawingsAhead(drawings, whenIdle, mayFetchAhead);
      drawAhead?.(session);
    },
    stop(): void {
      isStopped = true;
      clearTimeout(silence);
    },
  };
}

/** Whether a turn of this kind has a screen that is not there yet. */
const isLater = (kind: Turn["kind"] | undefined) => kind !== undefined && kind !== "choice" && !screens[kind];

/** Some phones say that their owner wants to save data. */
const mayFetchAhead = () =>
  navigator.onLine && !(navigator as { connection?: { saveData?: boolean } }).connection?.saveData;
