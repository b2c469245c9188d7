import { useEffect, useState } from "preact/hooks";
import type { RoomLine } from "../board/index.ts";
import type { DeskRooms } from "../desk-rooms.ts";
import type { DeskProps } from "./props.ts";

type State = ReturnType<DeskRooms["state"]>;

/** The conversations, each with what it waits for and how far it is, and the form to join another. */
export function List({ desk, texts, state }: DeskProps & { state: State }) {
  const { rooms, current, now } = state;
  return (
    <nav class="list" aria-label={texts("desk.bar.list")}>
      <div class="bar">
        <b>{texts("desk.bar.list")}</b>
        <small>
          {texts("desk.bar.open", { count: rooms.filter(({ line }) => line.is !== "over").length })}
        </small>
      </div>
      <div class="scroll">
        <ul>
          {rooms.map(({ acts: { room }, line }) => (
            <li key={room.key} class={line.is}>
              <button
                type="button"
                class="conv"
                aria-current={current?.room.key === room.key}
                onClick={() => desk.look(room.key)}
              >
                <Tube line={line} />
                <b>{line.name}</b>
                <em>{agoOf(now - room.heardAt, texts)}</em>
                <span>{line.waits}</span>
                {room.isNew && <i class="new">{texts("desk.list.new")}</i>}
              </button>
              <button
                type="button"
                class="leave"
                aria-label={`${texts(line.is === "over" ? "desk.over.remove" : "desk.leave")}: ${line.name}`}
                onClick={() => desk.leave(room.key)}
              >
                {texts(line.is === "over" ? "desk.over.remove" : "desk.leave")}
              </button>
            </li>
          ))}
        </ul>
        {!rooms[0] && <p class="none">{texts("desk.list.none")}</p>}
        <Join desk={desk} texts={texts} joining={state.joining} count={rooms.length} />
      </div>
    </nav>
  );
}

/** How full the tube is says how far a conversation is. */
function Tube({ line }: { line: RoomLine }) {
  return <u class="tube" aria-hidden="true" style={{ "--v": `${Math.round(line.share * 100)}%` }} />;
}

function agoOf(milliseconds: number, texts: DeskProps["texts"]): string {
  const minutes = Math.floor(milliseconds / 60_000);
  if (minutes < 1) return texts("desk.list.now");
  return minutes < 60
    ? texts("desk.list.minutes", { count: minutes })
    : texts("desk.list.hours", { count: Math.floor(minutes / 60) });
}

const known = ["shape", "no-such-code", "no-such-token", "no-token", "locked", "too-often", "busy", "full"];

function Join({
  desk,
  texts,
  joining,
  count,
}: Pick<DeskProps, "desk" | "texts"> & { joining: State["joining"]; count: number }) {
  const [typed, setTyped] = useState("");
  // What was joined by is used up.
  useEffect(() => setTyped(""), [count]);
  const isBusy = joining.is === "joining" || joining.is === "slow";
  const { why, minutes } = joining;
  const said =
    joining.is === "slow"
      ? texts("desk.join.slow")
      : why === "shape"
        ? texts("desk.join.shape")
        : why && texts(`desk.join.why.${known.includes(why) ? why : "other"}`);
  return (
    <form
      class="join"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isBusy) desk.join(typed);
      }}
    >
      <h2>{texts("desk.join.ask")}</h2>
      <p class="small" id="join-how">
        {texts("desk.join.how")}
      </p>
      <div class="row">
        <input
          type="text"
          class="code"
          aria-label={texts("desk.join.code")}
          aria-describedby="join-how join-why"
          aria-invalid={joining.is === "refused"}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          maxLength={20}
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        />
        {isBusy ? (
          <button type="button" onClick={() => desk.cancelJoin()}>
            {texts("desk.join.cancel")}
          </button>
        ) : (
          <button type="submit" class="main">
            {texts("desk.join.go")}
          </button>
        )}
      </div>
      <p class="why" id="join-why" role="status">
        {isBusy && joining.is === "joining" && texts("desk.join.joining")}
        {said} {minutes > 0 && texts("desk.join.again", { count: minutes })}
      </p>
    </form>
  );
}
