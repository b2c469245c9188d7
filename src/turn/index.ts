export type { Reading } from "../instruments/index.ts";
export { bounds as typedBounds, longestWords } from "../session/index.ts";
export {
  type Actions,
  type AsideAbout,
  type Basket,
  type BasketPart,
  type BasketState,
  type Carried,
  createActions,
  type Draft,
  type Fact,
  type PhotoGiven,
  type PhotoModels,
  type Services,
  type Texts,
  type TypedContext,
  type View,
  type Words,
} from "./actions.ts";
export type { Care, CareAnswer, CareGate, CareLine, CareQuestion, CareTime, FilterDue } from "./care.ts";
export { endingOf } from "./ending-of.ts";
export { titleOf } from "./findings.ts";
export { anyTime, createFirstTurns } from "./first-turns.ts";
export { createNumbers, monthNames, showList } from "./formats.ts";
export { greetedView } from "./greeting.ts";
export { handoverOf, handoverText } from "./handover.ts";
export { linesOf, wordsOfAnswer } from "./lines.ts";
export type { Fate, Live, LiveRoom, OpenSuggestion, Suggested } from "./live.ts";
export { minorDigits } from "./lookups.ts";
export { isOtherModel, type MachineAnswer, machineTurn, machineView } from "./machine.ts";
export { type Offer, offerOf, type SaidFact, takeOffer } from "./offers.ts";
export { type FirstTurn, type Given, leadAfter, leadOf, openingView, stopView } from "./opening-view.ts";
export { fillIn, sentenceBehind } from "./own-words.ts";
export { type Reply, replyTo } from "./reply.ts";
export { createTexts, type GrowingTexts, type Resource } from "./texts.ts";
export type {
  Answer,
  Ending,
  Evidence,
  FoundModel,
  FoundPart,
  Handover,
  Hazard,
  Line,
  Notice,
  PathMark,
  Plate,
  Signal,
  Turn,
  Wait,
} from "./turn.ts";
export { turnOf } from "./turn-of.ts";
export { handOn, makeReady, viewOf } from "./view.ts";
