import { Known } from "./known.tsx";
import { List } from "./list.tsx";
import { Phone } from "./phone.tsx";
import type { DeskProps } from "./props.ts";

/** The desk: the conversations, the screen of one of them, and what is known there; one at a time where it is narrow. */
export function Desk(props: DeskProps) {
  const { desk, texts } = props;
  const state = desk.state();
  const { current, column } = state;
  const tab = (to: "phone" | "known") => (
    <button type="button" aria-pressed={column === to} onClick={() => desk.show(to)}>
      {texts(`desk.bar.${to}`)}
    </button>
  );
  return (
    <div
      class={`desk at-${current ? column : "list"}`}
      lang={texts("ui.locale")}
      dir={texts("ui.direction") as "ltr"}
    >
      <List {...props} state={state} />
      {current && (
        <div class="room" key={current.room.key}>
          <div class="way-back">
            <button type="button" onClick={() => desk.show("list")}>
              {texts("desk.bar.to-list")}
            </button>
            {tab("phone")}
            {tab("known")}
          </div>
          <Phone {...props} acts={current} />
          <Known {...props} acts={current} />
        </div>
      )}
      <p class="visually-hidden" role="status">
        {state.news}
      </p>
    </div>
  );
}
