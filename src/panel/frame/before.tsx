import type { ComponentType } from "preact";
import { showList, type Texts, type Turn } from "../../turn/index.ts";
import { Hazards } from "./hazards.tsx";

type Props = { turn: Turn; texts: Texts; picture: ComponentType<{ id: string }> };

/**
 * What comes before the steps: the minutes, the tools, the hazards, and where to look. A gate says its hazards itself, and
 * the drawing of a reading follows the instrument, which has to be in sight.
 */
export function Before({ turn, texts, picture }: Props) {
  const { kind, minutes, tools, hazards, gated } = turn;
  if (kind === "gate") return null;
  const said = [
    minutes > 0 && texts("ui.minutes", { count: minutes }),
    tools.length > 0 && texts("ui.tools", { tools: showList(texts("ui.locale"), tools) }),
  ].filter(Boolean);
  return (
    <>
      {said.length > 0 && <p class="small">{said.join(" · ")}</p>}
      {!gated && <Hazards hazards={hazards} texts={texts} />}
      {kind !== "reading" && <Tile id={turn.picture} picture={picture} />}
    </>
  );
}

/** A drawing in its frame. */
export function Tile({ id, picture: Picture }: { id: string | null; picture: Props["picture"] }) {
  return (
    id && (
      <div class="tile">
        <Picture id={id} />
      </div>
    )
  );
}
