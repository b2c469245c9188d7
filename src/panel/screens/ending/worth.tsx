import type { Ending, Texts } from "../../../turn/index.ts";
import { Choices } from "../reading/index.ts";

type Props = Pick<Ending, "worth" | "age"> & {
  /** What was answered about the age of the machine; empty where nothing was. */
  chosen: string;
  onChosen(age: string): void;
  texts: Texts;
};

/** Whether mending is worth its price; where that turns on its age, whoever likes says how old the machine is. */
export function Worth({ worth, age, chosen, onChosen, texts }: Props) {
  if (!worth[0]) return null;
  const lines = age?.options.find(({ id }) => id === chosen)?.worth ?? worth;
  return (
    <details>
      <summary>{texts("part.worth")}</summary>
      {age && (
        <Choices
          legend={age.ask}
          options={age.options.map(({ id, text }) => [id, text] as const)}
          chosen={chosen}
          onChosen={onChosen}
        />
      )}
      {/* Read out when it changes, and printed: no passing notice, which paper leaves out. */}
      <div aria-live="polite">
        {lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
    </details>
  );
}
