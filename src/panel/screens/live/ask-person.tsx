import type { Live, Services, Texts } from "../../../turn/index.ts";

type Props = {
  services: Services;
  texts: Texts;
  why: Parameters<Live["ask"]>[0];
  class?: string;
  /** Shuts what the button stands in before it acts. */
  leave?(act: () => void): void;
};

/** Asks for one of the shop's people, where there is a relay and it is opening hours. */
export function AskPerson({ services: { live }, texts, why, class: look = "main wide", leave }: Props) {
  if (!live?.isOffered()) return null;
  return (
    <button
      type="button"
      class={look}
      onClick={({ currentTarget }) => {
        // A finger gives a button no focus on some phones; what comes then takes it from here.
        currentTarget.focus();
        if (leave) leave(() => live.ask(why));
        else live.ask(why);
      }}
    >
      {texts("live.get")}
    </button>
  );
}
