import type { ScreenProps } from "../../frame/index.ts";
import { Cubes } from "./cubes.tsx";
import { FilterAge } from "./filter-age.tsx";
import { Flow } from "./flow.tsx";
import { Ice } from "./ice.tsx";
import { Seal } from "./seal.tsx";
import { Supply } from "./supply.tsx";
import { Temperature } from "./temperature.tsx";

/** The instrument that a reading turn asks for. */
export function ReadingScreen(props: ScreenProps) {
  const need = props.turn.reading;
  switch (need?.instrument) {
    case "flow":
      return <Flow {...props} need={need} />;
    case "supply":
      return <Supply {...props} need={need} />;
    case "temperature":
      return <Temperature {...props} need={need} />;
    case "filter-age":
      return <FilterAge {...props} need={need} />;
    case "ice":
      return <Ice {...props} need={need} />;
    case "cubes":
      return <Cubes {...props} need={need} />;
    case "seal":
      return <Seal {...props} need={need} />;
    default:
      return null;
  }
}
