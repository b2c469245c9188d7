import { Component } from "preact";
import { type Draft, longestWords } from "../../../turn/index.ts";
import type { ScreenProps, Screens } from "../../frame/index.ts";
import { keepInSight } from "../reading/index.ts";

type Props = Pick<ScreenProps, "turn" | "actions" | "texts" | "busy"> & {
  draft: Draft;
  /** What is found for the typed words; it comes with the later screens. */
  found: Screens["foundInWords"] | undefined;
};

/** One more than is read, as in every field. */
const most = longestWords + 1;

const name = "own-words";

/**
 * A field for whoever finds no complaint that fits: what is typed brings some of the same answers nearer. What was
 * typed never leaves the device.
 */
export class OwnWords extends Component<Props, { typed: string }> {
  override state = { typed: this.props.draft.read(this.props.turn.turn)[name] ?? "" };

  readonly #type = (typed: string) => {
    const { draft, turn } = this.props;
    draft.keep(turn.turn, name, typed);
    this.setState({ typed });
  };

  override render({ found: Found, ...props }: Props, { typed }: { typed: string }) {
    const { texts } = props;
    return (
      <>
        <div class="field">
          <label for="own-words">{texts("ui.own-words")}</label>
          <p id="own-words-note" class="small">
            {texts("ui.own-words-note")}
          </p>
          <input
            id="own-words"
            type="text"
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            autocorrect=""
            maxLength={most}
            value={typed}
            aria-describedby="own-words-note"
            onInput={({ currentTarget: { value } }) => this.#type(value.slice(0, most))}
            onFocus={({ currentTarget }) => keepInSight(currentTarget)}
          />
        </div>
        {Found && <Found {...props} typed={typed} />}
      </>
    );
  }
}
