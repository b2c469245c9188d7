import { Component } from "preact";
import type { PathMark } from "../../turn/index.ts";

/** A state is a sign before it is a colour. */
export const signs: Record<PathMark["state"], string> = { clear: "✓", fixed: "✓", suspect: "?", unseen: "" };

type Props = {
  path: PathMark[];
  label: string;
  /** What was found at stations, in a few words, for who looks on. */
  found?: Record<string, string>;
};

/**
 * The way of the water as a branch of the line, each station with its name: what is cleared, what is suspected, where we
 * are. What acts on the water from outside its way stands there once something is known of it. `label` says the same in
 * a sentence.
 */
export class IcePath extends Component<Props> {
  /** Many turns lie at one station. */
  override shouldComponentUpdate(next: Props): boolean {
    return JSON.stringify(next) !== JSON.stringify(this.props);
  }

  override render({ path, label, found }: Props) {
    return (
      <div role="img" aria-label={label} class="way">
        {path.map(
          ({ station, state, here, above, name }) =>
            (!above || here || state !== "unseen") && (
              <span key={station} class={`${state} ${here ? "here" : ""} ${above ? "above" : ""}`}>
                <i>{signs[state]}</i>
                {name}
                {found?.[station] && <small>{found[station]}</small>}
              </span>
            ),
        )}
      </div>
    );
  }
}
