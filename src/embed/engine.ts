import type { StartFile } from "../loading/index.ts";
import { complain, markPage } from "../loading/index.ts";
import { nextTask, whenIdle } from "../loading/pace/index.ts";
import { createPicture } from "../panel/pictures/index.ts";
import { metaOf } from "../session/index.ts";
import {
  type Actions,
  endingOf,
  type Services,
  sentenceBehind,
  type Turn,
  type View,
} from "../turn/index.ts";
import { basketOf } from "./basket.ts";
import { createCaring } from "./caring.ts";
import { takeCarried, takingAlong, watchLinks } from "./carrying.ts";
import { localNow } from "./clock.ts";
import { openData } from "./compiled-data.ts";
import { watchConsent } from "./consent.ts";
import { createController } from "./controller.ts";
import { keepAwake, signal } from "./device.ts";
import { createDraftOf } from "./draft-of.ts";
import { drawingsIn } from "./drawings-in.ts";
import { createDress } from "./dress-file.ts";
import { createExclusive, meansOf } from "./exclusive.ts";
import { storageKey } from "./first-options.ts";
import { carriedIn } from "./fragment.ts";
import { keptFor } from "./kept-beside.ts";
import { createLater } from "./later.ts";
import { createLiveHelp, type LiveHelp } from "./live-help.ts";
import { loadPatiently } from "./load-patiently.ts";
import { isMissing, type Missing } from "./missing.ts";
import { bringDoor, openDoor } from "./open-door.ts";
import { readOptions } from "./options.ts";
import { rehearse } from "./rehearsal.ts";
import { saidIn } from "./said-in.ts";
import { clearStop, keepStop, readStop } from "./stop-mark.ts";
import type { Controller, Surroundings } from "./surroundings.ts";
import { watchTab } from "./tab-events.ts";
import { createTeller, watchLeaving } from "./teller.ts";
import { watchPage } from "./watch-page.ts";
import { bringWords } from "./words-file.ts";

export { paint } from "./paint.ts";

/** What the element shows once the engine runs. */
export type Running = Awaited<ReturnType<typeof startEngine>>;

/** `say` tells why a screen is not there yet, or null once that holds no longer. */
type About = {
  language: string;
  languages: string[];
  isCurrent(): boolean;
  say(trouble: "slow" | "lost" | null): void;
};

/**
 * Starts a session in the browser: everything behind the first question. In several short tasks, so that a tap or a
 * scroll on a slow phone is never held up; until the last of them nothing is shown and nothing has to be stopped.
 * @returns null where the start was overtaken by another
 */
export async function startEngine(
  host: HTMLElement,
  built: StartFile,
  { language, languages, isCurrent, say }: About,
  show: (view: View) => void,
) {
  const read = (name: string) => host.getAttribute(name);
  const { options, complaints } = readOptions(
    read,
    language,
    languages,
    document.baseURI,
    host.getAttributeNames(),
  );
  for (const complaint of complaints) complain(complaint);
  const dress = createDress(host, options.picture);
  const dressed = dress.bring();
  const { store, basket } = keptFor(options.sessionName);
  // Whoever comes back waits for what checks what was kept; to all others it comes in idle time.
  const fragment = carriedIn(location.hash);
  const isBack = fragment !== null || store.read() !== null || store.readAside().length > 0;
  const door = isBack ? bringDoor() : null;
  door?.catch(() => null);
  const compiled = await openData(options, language, built, isCurrent);
  if (!compiled) return null;
  const { guide, texts, scenarios, asides, facts, isFresh } = compiled;
  const ownLookup = () => typeof (host as { lookup?: unknown }).lookup === "function";
  let isRefused = () => false;
  // A page may set its function before or after the panel has started.
  const canLookUp = () =>
    (options.catalogue !== null && !isRefused()) || options.lookup !== null || ownLookup();
  let view: View | null = null;
  let lookAtDrafts = () => {};
  let help: LiveHelp | null = null;
  let rehearseIn: ((turn: Turn) => void) | null = null;
  const redraw = () => view && show(caring.remind(view));
  const later = createLater(host, options, { say, redraw });
  const drawings = drawingsIn(language);
  let tellAllCame = () => {};
  const allCame = new Promise<void>((resolve) => {
    tellAllCame = resolve;
  });
  const shop = async () => {
    const opened = await later.openShop();
    isRefused = opened.isRefused;
    return opened;
  };
  const load = (missing: Missing) => ("scenario" in missing ? scenarios.load(missing.scenario) : bringDoor());
  const lock = storageKey(options.sessionName);
  const { exclusively, letGo } = createExclusive(lock, meansOf(lock));
  const around: Surroundings = {
    guide,
    texts,
    store,
    door: openDoor,
    stop: {
      read: () => readStop(options.sessionName),
      keep: (mark) => keepStop(options.sessionName, mark),
      clear: () => clearStop(options.sessionName),
    },
    exclusively,
    model: options.model,
    canLookUp,
    now: localNow,
    show: (next) => {
      view = next;
      lookAtDrafts();
      later.look(next.turn?.kind);
      show(caring.remind(next));
      help?.look();
    },
    load: (missing) => loadPatiently(() => load(missing), isCurrent, say),
    // What does not come now is asked for again when it is needed.
    nearing: (ids) => Promise.all(ids.map((id) => scenarios.load(id).catch(() => null))),
    added: (...journal) => teller.added(...journal),
    shown: (session) => {
      void allCame.then(() => later.drawAhead(session, drawings));
      teller.shown(session, view?.turn ?? null);
      caring.shown(session);
    },
    whenIdle,
    rehearse: (turn) => rehearseIn?.(turn),
    ended: (session) => {
      const { outcome } = metaOf(session);
      const { causeId, part } = endingOf(session, outcome ?? "stopped", texts);
      const detail = { outcome, cause: causeId, part: part?.kind ?? null, model: part?.model ?? null };
      teller.ended(detail, canLookUp());
    },
  };
  const teller = createTeller(host, options.sessionName, around.ended);
  const caring = createCaring({
    ...{ sessionName: options.sessionName, texts, flow: guide.flow, now: localNow, lasted: teller.lasted },
    ...{ actions: () => actions, draft: () => draft, turn: () => view?.turn?.turn ?? "", redraw },
  });
  await door;
  if (fragment !== null) around.brought = await takeCarried(fragment);
  const controller = await openController(around, load);
  const draft = createDraftOf(() => {
    const { journal } = controller;
    return openDoor().createDrafts({ key: `${lock}:draft`, journal, place: () => sessionStorage });
  });
  lookAtDrafts = draft.look;
  // A code that somebody has rejected is not looked up by itself again.
  let lookedUp: string | null = null;
  const services: Services = {
    canLookUp,
    takePageModel: () => {
      const about = controller.about();
      if (about === lookedUp) return null;
      lookedUp = about;
      return about;
    },
    findModel: async (typed) => teller.looked(typed, await (await shop()).findModel(typed)),
    showPhoto: async (...given) => (await shop()).showPhoto(...given),
    partFor: async (code, kind, plate) =>
      teller.fitted(kind, await (await shop()).partFor(code, kind, plate)),
    basket: basketOf(host, basket),
    draft,
    now: localNow,
    keepAwake,
    signal,
    words: () => bringWords(language, () => controller.journal(), { ...options, asides, facts }),
    said: () => saidIn(controller.journal(), texts),
    care: caring.care,
    forget: () => controller.forget(() => caring.clear(() => [basket.clear(), help?.live?.end()])),
    ...takingAlong({ controller, store, draft, guide, texts, load, turn: () => view?.turn?.turn ?? "" }),
    get live() {
      return help?.live ?? null;
    },
    shopHelp: { name: options.shopName, link: options.helpLink },
    basketLink: options.basketLink,
  };
  if (isFresh) await nextTask();
  if (!isCurrent()) return null;
  whenIdle(() => void scenarios.fetchAll().then(tellAllCame));
  // Somebody who comes back finds the turn whole.
  await later.waitFor((view as View | null)?.turn?.kind);
  await dressed;
  help = createLiveHelp(host, options, { ...controller, view: () => view, texts });
  const lookAtPage = () => {
    markPage(host);
    void dress.look();
  };
  const watched = [watchTab(controller, letGo, store), watchPage(lookAtPage), watchLinks()];
  watched.push(help.stop, dress.stop, watchLeaving(teller), watchConsent(host, options.insight, teller));
  const stop = () => {
    later.stop();
    for (const stopWatching of watched) stopWatching();
  };
  const picture = createPicture(drawings);
  const actions: Actions = {
    ...controller.actions,
    measure: (turn, reading) => controller.actions.measure(turn, reading, sentenceBehind(draft, turn)),
    restart: () => {
      basket.clear();
      lookedUp = null;
      controller.actions.restart();
    },
  };
  const { takeEarly, tick: look } = controller;
  const running = {
    ...{ actions, services, texts },
    get screens() {
      const isGreeting = !view?.lines[0] && view?.turn?.turn === guide.flow.greets;
      return dress.screens({ ...later.screens, picture }, isGreeting);
    },
    takeEarly,
    look,
    wear: dress.wear,
    stop,
  };
  rehearseIn = (turn) => view && rehearse(turn, { ...running, view });
  return running;
}

/** What was kept may need a scenario or the door, which is then loaded first. @throws Error where it cannot be */
async function openController(
  around: Surroundings,
  load: (missing: Missing) => Promise<void>,
): Promise<Controller> {
  for (;;)
    try {
      return createController(around);
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
      await load(problem);
    }
}
