import { waitForSignal } from "../loading/pace/index.ts";
import type { Live, LiveRoom } from "../turn/index.ts";
import { storageKey } from "./first-options.ts";
import { isHelpOpen } from "./help-hours.ts";
import { createFile } from "./later-file.ts";
import type { LiveAround, OpenedLive } from "./live-means.ts";
import { createLivePlace } from "./live-place.ts";
import type { Options } from "./options.ts";
import { tellPage } from "./tell-page.ts";

const getLive = createFile<typeof import("./live.ts")>(
  "live",
  () => import("./live.ts"),
  (file) => Boolean(file.openLive),
);

/** Milliseconds between two tries to fetch what speaks to the relay. */
const PAUSE_MS = 5000;

/** A room of which nothing has come yet. */
const comingRoom: LiveRoom = {
  is: "coming",
  isUp: false,
  code: null,
  asking: [],
  inside: [],
  left: "",
  isPaused: false,
  isFull: false,
  lines: [],
  open: [],
};

/** Live help of one panel. What it takes is fetched once somebody asks for it, or comes back to it. */
export type LiveHelp = {
  /** Null where the page names no relay. */
  live: Live | null;
  /** Another screen is shown: there may be more to share. */
  look(): void;
  stop(): void;
};

/** @param host gets the events of the page */
export function createLiveHelp(
  host: EventTarget,
  { relay, helpHours, helpZone, sessionName }: Options,
  around: LiveAround,
): LiveHelp {
  if (!relay) return { live: null, look: () => {}, stop: () => {} };
  const place = createLivePlace(storageKey(sessionName));
  const watchers = new Set<() => void>();
  let opened: OpenedLive | null = null;
  let isComing = false;
  let isStopped = false;
  const changed = () => {
    for (const watcher of watchers) watcher();
  };
  const emit = (name: "asked" | "joined" | "left", by: string, why: string) =>
    tellPage(host, `fridgeside-help-${name}`, { by, why });

  async function bring(): Promise<void> {
    isComing = true;
    changed();
    while (isComing && !isStopped)
      try {
        const { openLive } = await getLive();
        if (isComing && !isStopped)
          opened = openLive({ ...around, relay: relay as string, place, emit, changed });
        isComing = false;
      } catch (problem) {
        console.error("<fridgeside-panel>: live help could not be loaded; trying again.", problem);
        await waitForSignal(PAUSE_MS);
      }
    changed();
  }

  const wake = () => opened?.wake();
  const wakeTab = () => document.visibilityState === "visible" && wake();
  addEventListener("online", wake);
  document.addEventListener("visibilitychange", wakeTab);
  if (place.read() !== null) void bring();

  const room = () => opened?.room() ?? (isComing ? comingRoom : null);
  return {
    live: {
      isOffered: () => !room() && isHelpOpen(helpHours, helpZone, Date.now()),
      room,
      watch(watcher) {
        watchers.add(watcher);
        return () => void watchers.delete(watcher);
      },
      ask(why) {
        if (room()) return;
        opened?.close();
        opened = null;
        place.write(null);
        emit("asked", "householder", why);
        void bring();
      },
      end() {
        isComing = false;
        opened?.end();
        changed();
      },
      bringHere() {
        opened?.close();
        opened = null;
        void bring();
      },
      letIn: (id) => opened?.letIn(id),
      turnAway: (id) => opened?.turnAway(id),
      pause: (is) => opened?.pause(is),
      newCode: () => opened?.newCode(),
      write: (text) => opened?.write(text) ?? false,
      answer: (id, is) => opened?.answer(id, is),
      lookNext: around.lookNext,
    },
    look: () => opened?.look(),
    stop() {
      isStopped = true;
      opened?.close();
      removeEventListener("online", wake);
      document.removeEventListener("visibilitychange", wakeTab);
    },
  };
}
