import type { ComponentChildren } from "preact";
import { type Reply, showList } from "../../../turn/index.ts";
import { Ask, type HeardProps, Tile } from "../../frame/index.ts";
import { openAmong } from "./context.ts";

/** What is said to a typed sentence, above the field: what was understood, and what one tap then does. */
export function Heard(props: HeardProps) {
  return (
    <div class="heard">
      <p class="sent">
        <b>{props.sent}</b>
      </p>
      {/* A new one for each, so that its words get the focus. */}
      <Ask key={JSON.stringify(props.reply)} text={asked(props)}>
        {choices(props)}
      </Ask>
    </div>
  );
}

function asked({ reply, words, about, turn, texts }: HeardProps): string {
  switch (reply.kind) {
    case "aside":
      return words.aside(reply.entry, about)?.text ?? "";
    case "model":
      return texts("composer.model", { code: reply.code });
    case "choices":
      return texts("composer.choices", { count: answersOf(reply, turn).length });
    default:
      return texts(`composer.${reply.kind}`);
  }
}

function choices(props: HeardProps): ComponentChildren {
  const { reply, actions, turn, texts, decide, busy, words, about, picture } = props;
  const done = <Choice text={texts("composer.done")} act={() => decide(null)} />;
  switch (reply.kind) {
    case "danger":
      return (
        <>
          {dangersOf(reply.danger, props).map(({ id, text }) => (
            <Choice key={id} text={text} act={() => actions.reportDanger(id)} />
          ))}
          <Not {...props} text="no-danger" />
        </>
      );
    case "choices":
      return (
        <>
          {answersOf(reply, turn).map(({ id, text }) => (
            <Choice
              key={id}
              text={text}
              busy={busy}
              act={() => {
                // What was told besides is asked about next.
                decide(reply.facts[0] ? { kind: "facts", facts: reply.facts, otherwise: null } : null);
                actions.answer(turn.turn, id, props.sent);
              }}
            />
          ))}
          <Not {...props} text="none-of-these" />
        </>
      );
    case "facts":
      return (
        <>
          <ul>
            {openAmong(reply.facts, props.view).map((fact) => (
              <FactLine key={fact.turn} said={words.said(fact)} />
            ))}
          </ul>
          <Yes
            {...props}
            act={() => actions.tell({ words: props.sent, facts: openAmong(reply.facts, props.view) })}
          />
          <Not {...props} text="no" />
        </>
      );
    case "model": {
      const isAsked = turn.kind === "model";
      const give = () =>
        isAsked
          ? actions.giveModel(turn.turn, reply.code, props.sent)
          : actions.tell({ words: props.sent, facts: [], model: reply.code });
      return (
        <>
          <Yes {...props} act={give} />
          <Not {...props} text="no" />
        </>
      );
    }
    case "aside":
    case "filled":
      return (
        <>
          {reply.kind === "aside" && (
            <Tile id={words.aside(reply.entry, about)?.drawing ?? null} picture={picture} />
          )}
          {done}
          <Not {...props} text="not-meant" />
        </>
      );
    default:
      return (
        <>
          <SendOn {...props} />
          {done}
        </>
      );
  }
}

/** Where somebody of the shop's is in, they may know what was meant. */
function SendOn({ services: { live }, sent, texts, decide }: HeardProps) {
  const names = live?.room()?.inside.map(({ name }) => name) ?? [];
  if (!live || !names[0]) return null;
  const send = () => live.write(sent) && decide(null);
  return <Choice text={texts("live.send-to", { names: showList(texts("ui.locale"), names) })} act={send} />;
}

const answersOf = ({ answers }: Extract<Reply, { kind: "choices" }>, turn: HeardProps["turn"]) =>
  answers.flatMap((id) => turn.answers.find((answer) => answer.id === id) ?? []);

/** The danger that was heard; all of them where it is none that can be named. */
function dangersOf(danger: string, { view: { dangers } }: HeardProps) {
  const heard = dangers.filter(({ id }) => id === danger);
  return heard[0] ? heard : dangers;
}

function FactLine({ said }: { said: { title: string; answer: string } | null }) {
  return (
    said && (
      <li>
        {said.title}: <b>{said.answer}</b>
      </li>
    )
  );
}

function Choice({ text, act, busy, quiet }: { text: string; act(): void; busy?: boolean; quiet?: boolean }) {
  return (
    <button type="button" class={quiet ? "quiet" : "own"} aria-disabled={busy} onClick={act}>
      {text}
    </button>
  );
}

function Yes({ act, decide, busy, texts }: HeardProps & { act(): void }) {
  const go = () => {
    act();
    decide(null);
  };
  return <Choice text={texts("composer.yes")} busy={busy} act={go} />;
}

/** It was not meant: what else it may mean comes next. */
function Not({ text, reply, decide, texts }: HeardProps & { text: string }) {
  const otherwise = "otherwise" in reply ? reply.otherwise : null;
  return <Choice quiet text={texts(`composer.${text}`)} act={() => decide(otherwise)} />;
}
