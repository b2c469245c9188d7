import { Component } from "preact";
import type { Texts, Turn } from "../../turn/index.ts";

type Props = { turn: Turn; texts: Texts };

/**
 * What we had changed in the home and is not put back yet, as chips; and about how many checks are left, with what it most
 * likely is on request.
 */
export class State extends Component<Props> {
  override shouldComponentUpdate({ turn, texts }: Props): boolean {
    const { changed, left, likely } = this.props.turn;
    return (
      texts !== this.props.texts ||
      JSON.stringify([turn.changed, turn.left, turn.likely]) !== JSON.stringify([changed, left, likely])
    );
  }

  override render({ turn: { changed, left, likely }, texts }: Props) {
    if (!changed[0] && !left) return null;
    return (
      <div class="state">
        {changed[0] && (
          <ul>
            {changed.map(({ id, text }) => (
              <li key={id}>{text}</li>
            ))}
          </ul>
        )}
        {left > 0 && (
          <details>
            <summary>{texts("thread.left", { count: left })}</summary>
            <p>{texts(likely[0] ? "thread.likely" : "thread.open")}</p>
            <ol>
              {likely.map((cause) => (
                <li key={cause}>{cause}</li>
              ))}
            </ol>
          </details>
        )}
      </div>
    );
  }
}
