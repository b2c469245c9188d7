import { showList, type Texts, type Turn } from "../../turn/index.ts";
import { Hazards } from "./hazards.tsx";

/** What is said before anybody kneels down at a freezer: the minutes, the tools, the hazards. */
export function Before({ turn, texts }: { turn: Turn; texts: Texts }) {
  const { minutes, tools, hazards, gated } = turn;
  const said = [
    minutes > 0 && texts("ui.minutes", { count: minutes }),
    tools.length > 0 && texts("ui.tools", { tools: showList(texts("ui.locale"), tools) }),
  ].filter(Boolean);
  return (
    <>
      {said.length > 0 && <p class="small">{said.join(" · ")}</p>}
      <Hazards hazards={hazards} brief={gated} texts={texts} />
    </>
  );
}
