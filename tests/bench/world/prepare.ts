import type { Turn } from "../../../src/turn/index.ts";

/** What these people have prepared: switched off, closed, pulled out. Times in minutes of the visit. */
export type Prepared = {
  tapShut: boolean;
  plugOut: boolean;
  iceOffSince: number | null;
  binOut: boolean;
  locked: boolean;
  pulledOut: boolean;
};

export const nothingPrepared = (): Prepared => ({
  tapShut: false,
  plugOut: false,
  iceOffSince: null,
  binOut: false,
  locked: false,
  pulledOut: false,
});

type Deed = [RegExp, (prepared: Prepared, now: number) => void];

/* What a sentence of a turn, a gate or an ending has people do, by its words. Sentences with 'if' are left out. */
const deeds: Deed[] = [
  [
    /plug (?:stays|is) out|(?:pull|pulled|take|taken) (?:the |its )?plug(?: out)?|\bunplug/i,
    (one) => {
      one.plugOut = true;
    },
  ],
  [
    /put (?:the|its) plug (?:back )?in|plug goes (?:back )?in|plug (?:it|the \w+) (?:back )?in|plug (?:is )?back in|plug in and/i,
    (one) => {
      one.plugOut = false;
    },
  ],
  [
    /(?:closed?|shut) the (?:small |stop )?tap|tap stays closed|tap is closed|taken the water tank out|water off at/i,
    (one) => {
      one.tapShut = true;
    },
  ],
  [
    /open(?:ed)? the (?:small |stop )?tap|open it (?:slowly|again|all|when you're back)|tap must be open|tap is open|it's open\b/i,
    (one) => {
      one.tapShut = false;
    },
  ],
  [
    /switch(?:ed)? the ice maker off|ice maker (?:is |must be )?off/i,
    (one, now) => {
      one.iceOffSince ??= now;
    },
  ],
  [
    /switch(?:ed)? the ice maker (?:back )?on|ice maker must be switched on|switch it on\b/i,
    (one) => {
      one.iceOffSince = null;
    },
  ],
  [
    /take the (?:ice )?bin (?:out|to the sink)/i,
    (one) => {
      one.binOut = true;
    },
  ],
  [
    /put the (?:ice )?bin (?:back|in place)|bin (?:is )?back in|(?:push|slide) it in until/i,
    (one) => {
      one.binOut = false;
    },
  ],
  [
    /switch the lock off/i,
    (one) => {
      one.locked = false;
    },
  ],
  [
    /push the (?:fridge|machine) back/i,
    (one) => {
      one.pulledOut = false;
    },
  ],
];

/** 'If all is well', which holds for whoever gives a turn's first answer. */
const ifWell =
  /^If (?:all is well|it is clear|the tube is (?:clear|sound)|nothing is left there|it turns),|,? if (?:all is well|it turns)(?=\.$)/;
const ifWet = /,? if it(?:'s| gets) wet(?=\.$)/;
const condition = /\bif\b|do not|choose “|did you|does it|never\b|once only|\bdon't\b/i;

/**
 * Does what the words of a turn say, in their order. What follows a question ('Is it wet? Then…') is left out as well,
 * but where the answer says so.
 * @param isWell the answer says that what was looked at is in order
 * @param isWet the answer says that it leaks
 */
export function doAsTold(
  prepared: Prepared,
  words: readonly string[],
  now: number,
  isWell = false,
  isWet = false,
): void {
  for (const line of words) {
    let asked = false;
    for (const sentence of line.split(/(?<=[.?!])\s+/)) {
      const isAnswer = asked && /^Then\b/.test(sentence);
      asked = sentence.endsWith("?") && !(isWet && /^Is it wet\b/.test(sentence));
      const well = isWell ? sentence.replace(ifWell, "") : sentence;
      const told = isWet ? well.replace(ifWet, "") : well;
      if (isAnswer || condition.test(told)) continue;
      for (const [words, act] of deeds) if (words.test(told)) act(prepared, now);
    }
  }
}

/** What a confirmed gate says that they have done, by the ids of its items. */
export function confirmGate(prepared: Prepared, { gate }: Turn, now: number): void {
  for (const { id, text } of gate?.items ?? []) {
    if (/^plug-out|unplugged/.test(id)) prepared.plugOut = true;
    if (/tap-closed|water-off|tap-shut/.test(id)) prepared.tapShut = true;
    if (/two-people|pulled-out/.test(id)) prepared.pulledOut = true;
    if (/^lock-on/.test(id)) prepared.locked = true;
    if (/^bin-out/.test(id)) prepared.binOut = true;
    // Whoever confirms stillness has waited for it.
    if (/ice-off|maker-off|maker-still/.test(id))
      prepared.iceOffSince = Math.min(prepared.iceOffSince ?? now, now - 15);
    doAsTold(prepared, [text], now);
  }
}
