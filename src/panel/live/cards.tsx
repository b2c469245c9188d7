import { Component } from "preact";
import {
  type Fate,
  type Live,
  type Offer,
  type OpenSuggestion,
  offerOf,
  takeOffer,
} from "../../turn/index.ts";
import type { ComposerProps } from "../frame/index.ts";
import { adopt } from "./adopt.ts";
import { ModelCard } from "./model-card.tsx";

type Props = ComposerProps & { live: Live };

/** One suggestion, and what can be taken of it here. */
type Shown = OpenSuggestion & { offer: Offer };

/** Makes what stands above the field at the panel's end: what somebody suggests, each for one tap. @param sheet its rules */
export function createLiveCards(sheet: CSSStyleSheet) {
  return class LiveCards extends Component<Props> {
    #box: HTMLElement | null = null;
    #pointed: Element[] = [];

    override componentDidMount(): void {
      this.componentDidUpdate();
    }

    override componentDidUpdate(): void {
      adopt(this.#box, sheet);
      this.#point();
    }

    override componentWillUnmount(): void {
      for (const button of this.#pointed) button.removeAttribute("data-pointed");
    }

    /** Rings the answers that somebody points at, where they stand: they are drawn by the first file, which knows of nobody. */
    #point(): void {
      const buttons = [...(this.#box?.closest(".panel")?.querySelectorAll(".dock .answers > button") ?? [])];
      const pointed = this.#shown().flatMap(({ name, offer }) => {
        const button =
          offer.kind === "point" && buttons.find(({ textContent }) => textContent === offer.text);
        return button ? [[button, name] as const] : [];
      });
      for (const button of this.#pointed) button.removeAttribute("data-pointed");
      for (const [button, name] of pointed)
        button.setAttribute("data-pointed", this.props.texts("live.points", { name }));
      this.#pointed = pointed.map(([button]) => button);
    }

    #shown(): Shown[] {
      const { live, view, texts } = this.props;
      return (live.room()?.open ?? []).flatMap((one) => {
        const offer = offerOf(one.suggested, view, texts);
        return offer ? { ...one, offer } : [];
      });
    }

    readonly #settle = ({ id, suggested }: OpenSuggestion, is: Fate) => {
      const { live, view, texts, actions } = this.props;
      const heading = this.#box?.closest(".panel")?.querySelector<HTMLElement>("h2");
      const isDone = is !== "taken" || takeOffer(suggested, view, texts, actions, live);
      live.answer(id, isDone ? is : "past");
      // The card is gone, and the focus was in it.
      heading?.focus({ preventScroll: true });
    };

    override render(props: Props) {
      const shown = this.#shown();
      const cards = shown.filter(({ offer }) => offer.kind !== "point");
      return (
        <div
          role="status"
          class={cards[0] ? "heard suggested" : "suggested"}
          ref={(box) => {
            this.#box = box;
          }}
        >
          {shown.map((one) => (
            <Card key={one.id} {...props} one={one} settle={this.#settle} />
          ))}
        </div>
      );
    }
  };
}

type CardProps = Props & { one: Shown; settle(one: OpenSuggestion, is: Fate): void };

function Card(props: CardProps) {
  const { one, settle, texts, busy, services } = props;
  const { name, offer } = one;
  const take = (suggested = one.suggested) => settle({ ...one, suggested }, "taken");
  const no = (
    <button type="button" class="quiet" onClick={() => settle(one, "declined")}>
      {texts(offer.kind === "told" || offer.kind === "model" ? "live.no" : "live.no-thanks")}
    </button>
  );
  const yes = (text: string) => (
    <button type="button" class="own" aria-disabled={busy} onClick={() => !busy && take()}>
      {text}
    </button>
  );
  if (offer.kind === "point")
    return <p class="visually-hidden">{texts("live.pointed", { name, answer: offer.text })}</p>;
  if (offer.kind === "model")
    return (
      <ModelCard
        model={offer.model}
        services={services}
        lost={() => settle(one, "past")}
        show={(model) => (
          <div class="ask">
            <Said text={texts("live.model", { name, model })} why={offer.why} />
            <button
              type="button"
              class="own"
              aria-disabled={busy}
              onClick={() => !busy && take({ kind: "correct", model, why: "" })}
            >
              {texts("live.yes")}
            </button>
            {no}
          </div>
        )}
      />
    );
  const why = "why" in offer ? offer.why : "";
  return (
    <div class="ask">
      <Said text={saidOf(offer, name, props)} why={why} />
      {offer.kind === "told" && (
        <ul>
          {offer.facts.map(({ turn, title, text }) => (
            <li key={turn}>
              {title}: <b>{text}</b>
            </li>
          ))}
        </ul>
      )}
      {yes(yesOf(offer, props))}
      {no}
    </div>
  );
}

function Said({ text, why }: { text: string; why: string }) {
  return (
    <p>
      <b>{text}</b>
      {why && (
        <>
          {" "}
          <bdi>{why}</bdi>
        </>
      )}
    </p>
  );
}

function saidOf(offer: Exclude<Offer, { kind: "point" | "model" }>, name: string, { texts }: Props): string {
  if (offer.kind === "check") return texts("live.check", { name, check: offer.name });
  return texts(`live.${offer.kind === "ending" ? offer.ending : offer.kind}`, { name });
}

function yesOf(offer: Exclude<Offer, { kind: "point" | "model" }>, { texts }: Props): string {
  switch (offer.kind) {
    case "answer":
      return offer.text;
    case "check":
      return texts("live.check-yes");
    case "ending":
      return texts(offer.ending === "fixed" ? "ui.ice-yes" : "ui.help-yes");
    case "told":
      return texts("live.yes");
  }
}
