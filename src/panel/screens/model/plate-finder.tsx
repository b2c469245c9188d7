import { useState } from "preact/hooks";
import type { Texts } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Choices } from "../reading/index.ts";

/** Machines whose plates hide in different places, each as a drawing of 24 by 32. */
const shapes: Record<string, string> = {
  "top-freezer": "M3 2h18v28H3zM3 12h18M18 6v3M18 15v5",
  "bottom-freezer": "M3 2h18v28H3zM3 20h18M18 12v5M18 23v3",
  "side-by-side": "M3 2h18v28H3zM11 2v28M9 13v5M13 13v5",
  "french-door": "M3 2h18v28H3zM3 20h18M12 2v18M10 11v5M14 11v5M8 24h8",
};

/** Every drawing that says where the plate is, and what stands on it. */
export const platePictures = ["rating-plate", ...Object.keys(shapes).map((machine) => `plate-${machine}`)];

/** A machine of the catalogue in the reader's words; the slug's own words where there are none. */
export function machineName(texts: Texts, machine: string): string {
  const isKnown = Object.hasOwn(shapes, machine) || machine === "tank-fed";
  return isKnown ? texts(`measure.machine-${machine}`) : machine.replaceAll("-", " ");
}

type Props = { open: boolean; picture: ScreenProps["picture"]; texts: Texts };

/** Where the plate sits on the machine at hand, likeliest place first, and which of its numbers is the model code. */
export function PlateFinder({ open, picture: Picture, texts }: Props) {
  const [machine, setMachine] = useState<string>();
  const linesOf = (key: string) =>
    texts(`measure.${key}`)
      .split("\n")
      .map((line) => <li key={line}>{line}</li>);
  return (
    <div class="plate">
      <details open={open}>
        <summary>{texts("measure.plate-where")}</summary>
        <Choices
          legend={texts("measure.plate-machine")}
          options={Object.entries(shapes).map(([each, shape]) => [
            each,
            <>
              <svg viewBox="0 0 24 32" aria-hidden="true">
                <path d={shape} />
              </svg>
              {machineName(texts, each)}
            </>,
          ])}
          chosen={machine}
          onChosen={setMachine}
        />
        {machine && (
          <>
            <Picture id={`plate-${machine}`} />
            <p>{texts("measure.plate-order")}</p>
            <ol>{linesOf(`plate-${machine}`)}</ol>
          </>
        )}
      </details>
      <details open={open}>
        <summary>{texts("measure.plate-which")}</summary>
        <Picture id="rating-plate" />
        <ul>{linesOf("plate-numbers")}</ul>
      </details>
    </div>
  );
}
