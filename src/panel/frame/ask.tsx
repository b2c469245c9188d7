import { Component, type ComponentChildren } from "preact";

type Props = { children: ComponentChildren; text: string };

/** A question in place, never a browser dialog. The words get the focus, so that they are read before a button is. */
export class Ask extends Component<Props> {
  #words: HTMLElement | null = null;

  override componentDidMount(): void {
    this.#words?.focus();
  }

  override render({ children, text }: Props) {
    return (
      <div class="ask">
        <p
          ref={(words) => {
            this.#words = words;
          }}
          tabIndex={-1}
        >
          {text}
        </p>
        {children}
      </div>
    );
  }
}
