import { useEffect, useRef, useState } from "preact/hooks";
import type { PhotoModels } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Field, Form, useEntry, useKept } from "../reading/index.ts";
import { type Answered, ModelResult } from "./model-result.tsx";
import { PlateFinder } from "./plate-finder.tsx";

/**
 * Asks for the code on the rating plate, and never takes a near miss without the person's own tap. A code that the
 * page gives is looked up as if it was typed. It is taken by itself only where no other model could be meant, and
 * where a tap has led here: a page that loads must not move on under somebody's eyes.
 */
export function ModelScreen({ turn, actions, services, texts, busy, picture }: ScreenProps) {
  const [typed, setTyped] = useKept({ turn, services }, "model", "");
  const { refusal, refuse, accepted: found, accept: setFound, edit } = useEntry<Answered>();
  const [looking, setLooking] = useState(false);
  // An answer to an earlier question must not overwrite that to a later one.
  const latest = useRef(0);

  // What a photo was read as is not kept.
  const give = (code: string | null, asked = typed || (code ?? "")) =>
    actions.giveModel(turn.turn, code, asked);

  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    const given = services.takePageModel();
    // Nor over what was typed before a reload.
    if (!given || typed) return;
    setTyped(given);
    // In that frame a tap that led here has moved the focus to this turn's heading.
    const frame = requestAnimationFrame(() => {
      const root = form.current?.getRootNode() as Document | ShadowRoot | undefined;
      find(given, root?.activeElement?.localName === "h2");
    });
    return () => {
      cancelAnimationFrame(frame);
      latest.current += 1;
    };
  }, []);

  const photo = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const found = (models: PhotoModels | null) => {
      forget();
      if (models) setFound(models);
    };
    const shown = services
      .showPhoto(photo.current as HTMLDivElement, { texts, find: services.findModel, found })
      .catch(() => null);
    return () => void shown.then((end) => end?.());
  }, []);

  function forget() {
    latest.current += 1;
    setLooking(false);
    edit();
  }

  /** @param takesExact whether a code that can mean one model only counts without a tap */
  async function find(code = typed, takesExact = false) {
    if (looking) return;
    forget();
    const asked = latest.current;
    setLooking(true);
    const answer = await services.findModel(code).catch(() => "broken" as const);
    if (asked !== latest.current) return;
    setLooking(false);
    if (answer !== "broken" && answer.kind === "unreadable") {
      refuse(texts(`measure.code-${answer.problem}`));
    } else if (takesExact && answer !== "broken" && answer.kind === "exact") give(answer.model.code, code);
    else setFound(answer);
  }

  return (
    <Form form={form} onSent={() => find()}>
      <Field
        label={texts("measure.code-label")}
        typed={typed}
        onTyped={(text) => {
          setTyped(text);
          forget();
        }}
        refusal={refusal}
        code
      />
      <button type="submit" class={found ? "wide" : "main wide"} aria-disabled={looking}>
        {texts("measure.find")}
      </button>
      <p role="status" class="small late">
        {looking && texts("measure.finding")}
      </p>
      <div ref={photo} />
      {found && (
        <ModelResult
          found={found}
          busy={busy}
          texts={texts}
          onTaken={give}
          onRetry={found === "broken" ? () => find() : () => refuse(texts("measure.code-compare"))}
        />
      )}
      {!found && (
        <button type="button" class="quiet" aria-disabled={busy} onClick={() => give(null)}>
          {texts("measure.plate-lost")}
        </button>
      )}
      {/* Shut by the first letter: whoever types has found the plate, and the answer comes here. */}
      <PlateFinder open={!typed} picture={picture} texts={texts} />
    </Form>
  );
}
