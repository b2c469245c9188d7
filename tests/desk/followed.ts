import type { Followed } from "../../src/desk/follow.ts";
import { type Guide, journalOf, type Session, startSession } from "../../src/session/index.ts";
import { createTexts, type Texts, viewOf } from "../../src/turn/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { type Answers, at, follow, healthy } from "../session/drive.ts";
import { readerOf } from "../turn/reader.ts";

export const guide: Guide = guideFor(ownFlow);
export const texts: Texts = createTexts(ownTexts, "en-GB", readerOf(ownFlow));

/** A plumbed machine that makes no ice, answered as far as a turn. */
export const walkTo = (stop: string, answers: Answers = {}): Session =>
  follow(startSession(guide, at(0)), { ...healthy, ...answers }, stop);

/** The same as a desk has it. */
export function followedOf(session: Session): Followed {
  return { journal: journalOf(session.log), session, view: viewOf(session, texts, at(60), []) };
}
