import { vi } from "vitest";
import { createController } from "../../src/embed/controller.ts";
import * as door from "../../src/embed/door.ts";
import type { LogStore } from "../../src/embed/log-store.ts";
import type { StopMark } from "../../src/embed/stop-mark.ts";
import type { Surroundings } from "../../src/embed/surroundings.ts";
import type { Journal } from "../../src/session/index.ts";
import type { View } from "../../src/turn/index.ts";
import { ownFlow } from "../own-flow.ts";
import { inTradeOrder } from "../session/drive.ts";

const guide = inTradeOrder(ownFlow);

/** A storage in memory; `kept` is the journal that lies in it, `mark` the danger that was reported. */
export function createMemory(): LogStore & { kept: unknown; aside: unknown; mark: StopMark | null } {
  let text: string | null = null;
  const store = {
    get kept() {
      return JSON.parse(text ?? "null");
    },
    set kept(journal: unknown) {
      text = JSON.stringify(journal);
    },
    aside: null as unknown,
    mark: null as StopMark | null,
    others: [] as unknown[],
    read: () => text,
    write: (next: string) => {
      text = next;
      return true;
    },
    setAside: (log: unknown) => {
      store.aside = structuredClone(log);
    },
    readAside: () => store.others,
    writeAside: (logs: unknown[]) => {
      store.others = structuredClone(logs);
    },
    clear: () => {
      text = null;
      store.others = [];
    },
    watch: () => () => {},
  };
  return store;
}

type Memory = LogStore & { mark: StopMark | null };

/** A tab on a storage, by a clock that a test sets; texts are their keys. */
export function open(
  store: Memory,
  clock: { now: string },
  model: string | null = null,
  exclusively: (work: () => void) => void = (work) => work(),
  canLookUp = () => true,
  more: Partial<Surroundings> = {},
) {
  const ended = vi.fn();
  const views: View[] = [];
  const controller = createController({
    door: () => door,
    guide,
    store,
    stop: {
      read: () => store.mark,
      keep: (mark) => {
        store.mark ??= mark;
      },
      clear: () => {
        store.mark = null;
      },
    },
    ended,
    texts: (key) => (key === "ui.locale" ? "en-GB" : key),
    model,
    exclusively,
    canLookUp,
    now: () => clock.now,
    show: (view) => views.push(view),
    ...more,
  });
  return {
    ...controller,
    ended,
    views,
    turn: () => views.at(-1)?.turn?.turn,
    notices: () => views.at(-1)?.notices.map(({ id }) => id),
  };
}

/** Gives answer after answer at whatever turn is on screen. */
export const answerAll = (panel: ReturnType<typeof open>, ...answers: string[]) => {
  for (const answer of answers) panel.actions.answer(panel.turn() ?? "", answer);
};

/** What the entries of a kept journal say, in their order. */
export const entriesOf = ({ kept }: { kept: unknown }): object[] =>
  (kept as Journal).entries.map(({ event }) => event);
