import { bounds as shopBounds } from "../catalogue/index.ts";
import { flowBounds } from "../guide/index.ts";
import { longestWords } from "./longest-words.ts";

/**
 * What a log and a typed text may hold, at most. Whatever is beyond was not written by the panel, or not typed by a
 * person; without a source all of these are judgement.
 */
export const bounds = {
  /** Entries of a journal: no way through the flow takes more than forty turns, and there are second thoughts. */
  entries: 1000,
  /** With more entries than this a journal is made anew from what is in force. */
  entriesBeforeCompaction: 800,
  /** The id of an entry. */
  entryId: 40,
  /** Events of a log as earlier versions kept it. */
  events: 500,
  /** So many writes back a tab that slept is still known to have been seen. */
  lineage: 30,
  /** A turn, which is a check and its turn. */
  turn: flowBounds.turnRef,
  /** An answer, a danger or an item of a gate. */
  id: flowBounds.id,
  /** Items that one gate asks for. */
  items: flowBounds.list,
  /** An instant of RFC 3339. */
  time: 40,
  /** The version of the flow. */
  version: flowBounds.version,
  /** A model code as a shop writes it. */
  code: shopBounds.label,
  /** What was typed as a model or serial number, cut where it could not be one. */
  typed: shopBounds.typedCode,
  /** What was typed as a number or a year. */
  typedNumber: 40,
  /** A text of a pack; the longest of ours has 960 characters. */
  text: 5000,
  /** Texts of one file or folder of a pack. */
  texts: 2000,
  /** Scenarios of a pack; ours has ten. */
  scenarios: 100,
  /** Questions that a pack is tried with, at the door. */
  tries: 300,
  /** Facts that one sentence may state. */
  facts: 10,
  /** What was typed in own words; a person describes a fault in a few lines. */
  ownWords: longestWords,
} as const;
