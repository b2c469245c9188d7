import { Component, type ComponentProps, type ComponentType } from "preact";
import type { Screens } from "../../frame/index.ts";

type Props = ComponentProps<Screens["before"]>;

/** Over the place that the first file keeps for it (`header + * > .choice` in panel.css): whatever comes of it, nothing moves. */
const place = {
  order: -1,
  width: "100%",
  aspectRatio: "4",
  marginTop: 0,
  marginBottom: "-25%",
  borderRadius: "var(--fs-radius)",
  objectFit: "cover",
} as const;

/**
 * What stands before the steps, with a shop's picture above the question.
 * @param alt what it shows; empty where it only decorates
 * @param lost told once if it can't be shown: nothing is drawn in its place then, and its place is kept
 */
export function createGreeting(
  Before: ComponentType<Props>,
  { src, alt }: { src: string; alt: string },
  lost: () => void,
): ComponentType<Props> {
  let isLost = false;
  return class Greeting extends Component<Props> {
    readonly #lose = () => {
      isLost = true;
      this.setState({});
      lost();
    };

    override render(props: Props) {
      return (
        <>
          {isLost ? (
            <i class="greeting" hidden />
          ) : (
            <img
              class="greeting"
              // Before the address, for which they hold.
              loading="lazy"
              decoding="async"
              alt={alt}
              style={place}
              src={src}
              onError={this.#lose}
            />
          )}
          <Before {...props} />
        </>
      );
    }
  };
}
