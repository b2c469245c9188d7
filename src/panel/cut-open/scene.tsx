import { Component } from "preact";
import type { Turn } from "../../turn/index.ts";
import { signs } from "../pictures/index.ts";
import type { CutOpenDrawing } from "./drawing.ts";
import { type Label, sceneOf } from "./scene-of.ts";

/** Where the columns of names end and begin, of the drawing's width. */
const columns = { left: 0.18, right: 0.795 };

type Props = { turn: Turn };

/** Makes the component that draws the machine cut open, with its rules for a panel's shadow root. */
export function createScene(drawing: CutOpenDrawing, sheet: CSSStyleSheet) {
  const { width, height } = drawing.frame;

  /** One picture with the sentence of the ice path, in whose place it is. */
  return class Scene extends Component<Props> {
    override shouldComponentUpdate({ turn }: Props): boolean {
      return turn !== this.props.turn;
    }

    readonly #bringRules = (figure: HTMLElement | null) => {
      const root = figure?.getRootNode();
      if (root instanceof ShadowRoot && !root.adoptedStyleSheets.includes(sheet))
        root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
    };

    override render({ turn }: Props) {
      const { shapes, labels } = sceneOf(turn, drawing);
      return (
        <div
          // A machine that is shut says nothing.
          {...(labels[0] ? { role: "img", "aria-label": turn.pathText } : { "aria-hidden": true })}
          class="cut"
          ref={this.#bringRules}
        >
          <svg class="fs-pic" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
            {shapes.map(({ tone, path }) => (
              <path class={tone} d={path} />
            ))}
            {labels.map(({ at: [x, y], side, foot }) => {
              const column = columns[side] * width;
              const line = `M${x} ${y}L${column + (side === "left" ? 10 : -10)} ${foot}H${column}`;
              return (
                <>
                  <path class="cl halo" d={line} />
                  <path class="cl" d={line} />
                  <circle class="halo" cx={x} cy={y} r="4.5" />
                  <circle class="n" cx={x} cy={y} r="3" />
                </>
              );
            })}
          </svg>
          {labels.map(nameOf)}
        </div>
      );
    }
  };

  function nameOf({ station, name, state, here, side, foot }: Label) {
    const inset = `${100 * (side === "left" ? 1 - columns.left : columns.right)}%`;
    return (
      <span
        key={station}
        class={`at-${side} ${state} ${here ? "here" : ""}`}
        style={{ top: `${(100 * foot) / height}%`, [side === "left" ? "right" : "left"]: inset }}
      >
        <i>{signs[state]}</i>
        <b>{name}</b>
      </span>
    );
  }
}
