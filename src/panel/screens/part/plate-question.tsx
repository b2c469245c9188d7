import { useEffect, useState } from "preact/hooks";
import type { Plate, Texts } from "../../../turn/index.ts";
import { type Asked, Choices, Field, Form, otherVariant, useEntry } from "../reading/index.ts";

type Props = {
  asked: Asked;
  plate: Plate;
  /** The serial number that was read cannot be held against those of the shop's list. */
  isUnlike: boolean;
  onRead(plate: Plate): void;
  texts: Texts;
};

/** Asks for what decides between two parts of one model. The answers stay in sight, so that they can be changed. */
export function PlateQuestion({ part, ...props }: Props & { part: string }) {
  const { asked, plate, onRead, texts } = props;
  if (!asked.variants && !asked.serial) return null;
  return (
    <div class="plate-question">
      <p role="status">{texts(`part.needs-${asked.serial ? "serial" : "variant"}`, { part })}</p>
      {asked.variants && (
        <Choices
          legend={texts("part.variant")}
          options={[
            ...asked.variants.map((each) => [each, each] as const),
            [otherVariant, texts("part.other-variant")],
            ["", texts("measure.plate-lost")],
          ]}
          chosen={plate.variant === null ? "" : plate.variant}
          // Another variant may count its serial numbers differently.
          onChosen={(variant) => onRead({ variant: variant || null })}
        />
      )}
      {asked.serial && <SerialQuestion {...props} />}
    </div>
  );
}

function SerialQuestion({ plate: { serial, ...rest }, isUnlike, onRead, texts }: Props) {
  const [typed, setTyped] = useState("");
  const { refusal, refuse, edit } = useEntry();
  useEffect(() => {
    if (isUnlike) refuse(texts("part.serial-unlike"));
  }, [isUnlike]);
  return (
    <Form
      onSent={() => {
        if (typed.trim()) onRead({ ...rest, serial: typed.trim() });
        else refuse(texts("part.serial-empty"));
      }}
    >
      <Field
        label={texts("part.serial")}
        note={texts("part.serial-note")}
        typed={typed}
        onTyped={(text) => {
          edit(() => setTyped(text));
          if (serial !== undefined) onRead(rest);
        }}
        refusal={refusal}
        code
      />
      <div class="answers">
        <button type="submit" class="main">
          {texts("part.show")}
        </button>
        <button
          type="button"
          class="quiet"
          aria-pressed={serial === null}
          onClick={() => edit(() => onRead({ ...rest, serial: null }))}
        >
          {texts("measure.plate-lost")}
        </button>
      </div>
    </Form>
  );
}
