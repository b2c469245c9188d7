import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { endings, type Suggestion, suggestionBounds } from "../../cobrowse/client/index.ts";
import { type Board, choicesAt } from "../board/index.ts";
import type { Followed } from "../follow.ts";
import { Correct } from "./correct.tsx";
import { AddFact } from "./fact.tsx";
import type { RoomProps } from "./props.ts";

/** What goes with its reason: an answer, a check or an ending. */
type Proposal = Suggestion & { kind: "propose" };

type Props = RoomProps & { followed: Followed; board: Board };

/** What may be suggested now. Nothing of it happens before the householder has tapped it themselves. */
export function Suggest(props: Props) {
  const { desk, acts, texts, followed, board } = props;
  const { key, over, shared } = acts.room;
  const [proposal, setProposal] = useState<{ what: Proposal; says: string } | null>(null);
  const { turn } = followed.view;
  const choices = choicesAt(turn);
  if (over || shared.isEnded) return null;
  const isStop = turn?.ending?.outcome === "stopped";
  const propose = (what: Proposal, says: string) => setProposal({ what, says });
  return (
    <div class="suggest">
      <h2>{texts("desk.suggest.title")}</h2>
      {proposal && (
        <Why
          key={proposal.says}
          {...props}
          says={proposal.says}
          cancel={() => setProposal(null)}
          send={(why) => {
            const isSent = desk.suggest(key, { ...proposal.what, why });
            if (isSent) setProposal(null);
            return isSent;
          }}
        />
      )}
      {turn && !turn.ending && (
        <>
          <h3>{texts("desk.suggest.answers")}</h3>
          {!choices[0] && <p class="none">{texts("desk.suggest.none-here")}</p>}
          <ul class="choices">
            {choices.map(({ id, text, role }) => (
              <li key={id}>
                <span>{text}</span>
                <button
                  type="button"
                  aria-label={`${texts("desk.suggest.point")}: ${text}`}
                  onClick={() => desk.suggest(key, { kind: "point", turn: turn.turn, answer: id })}
                >
                  {texts("desk.suggest.point")}
                </button>
                {role === "own" && (
                  <button
                    type="button"
                    aria-label={`${texts("desk.suggest.propose")}: ${text}`}
                    onClick={() => propose({ kind: "propose", turn: turn.turn, answer: id, why: "" }, text)}
                  >
                    {texts("desk.suggest.propose")}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {board.next[0] && (
        <>
          <h3>{texts("desk.suggest.next")}</h3>
          <div class="sugs">
            {board.next.map(({ check, name, tells }) => (
              <button
                key={check}
                type="button"
                class="sug"
                onClick={() => propose({ kind: "propose", check, why: "" }, name)}
              >
                <b>{name}</b>
                <small>{tells}</small>
              </button>
            ))}
          </div>
        </>
      )}
      {!isStop && (
        <>
          <h3>{texts("desk.suggest.other")}</h3>
          <AddFact {...props} />
          <Correct {...props} />
          <details>
            <summary>{texts("desk.suggest.ending")}</summary>
            <div class="sugs">
              {endings.map((ending) => (
                <button
                  key={ending}
                  type="button"
                  class="sug"
                  onClick={() =>
                    propose({ kind: "propose", ending, why: "" }, texts(`desk.suggest.${ending}`))
                  }
                >
                  <b>{texts(`desk.suggest.${ending}`)}</b>
                </button>
              ))}
            </div>
          </details>
        </>
      )}
    </div>
  );
}

type WhyProps = RoomProps & { says: string; cancel(): void; send(why: string): boolean };

/** Why something is proposed: the householder reads it before they say yes or no. */
function Why({ desk, acts, texts, says, cancel, send }: WhyProps) {
  const { key, drafts } = acts.room;
  const [isTooLong, setTooLong] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  // Before the next key comes: it belongs here already.
  useLayoutEffect(() => {
    field.current?.focus();
    field.current?.scrollIntoView?.({ block: "nearest" });
  }, []);
  const why = drafts["why"] ?? "";
  return (
    <form
      class="asked"
      onSubmit={(event) => {
        event.preventDefault();
        const isSent = send(why.trim());
        setTooLong(!isSent);
        if (isSent) desk.draft(key, "why", "");
      }}
    >
      <b>{says}</b>
      <label>
        {texts("desk.suggest.why")}
        <input
          ref={field}
          type="text"
          autocomplete="off"
          maxLength={suggestionBounds.text}
          value={why}
          onInput={({ currentTarget }) => desk.draft(key, "why", currentTarget.value)}
        />
      </label>
      {isTooLong && <p role="alert">{texts("desk.suggest.too-long")}</p>}
      <div class="row">
        <button type="submit" class="main">
          {texts("desk.suggest.send")}
        </button>
        <button type="button" onClick={cancel}>
          {texts("desk.suggest.cancel")}
        </button>
      </div>
    </form>
  );
}
