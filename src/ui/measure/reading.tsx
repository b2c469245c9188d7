import type { ScreenProps } from "../chat/index.ts";
import { FilterAge } from "./filter-age.tsx";
import { Flow } from "./flow.tsx";
import { Temperature } from "./temperature.tsx";

/** The instrument that a reading turn asks for. */
export function ReadingScreen(props: ScreenProps) {
  const need = props.turn.reading;
  if (need?.instrument === "flow") return <Flow {...props} need={need} />;
  if (need?.instrument === "temperature") return <Temperature {...props} need={need} />;
  return need && <FilterAge {...props} need={need} />;
}
