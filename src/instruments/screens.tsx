import type { ComponentType } from "preact";
import type { ScreenProps } from "../panel/frame/index.ts";
import { Screen as cubes } from "./cubes/screen.tsx";
import { Screen as filterAge } from "./filter-age/screen.tsx";
import { Screen as flow } from "./flow/screen.tsx";
import { Screen as ice } from "./ice/screen.tsx";
import type { InstrumentName, NeedOf } from "./index.ts";
import { Screen as seal } from "./seal/screen.tsx";
import { Screen as supply } from "./supply/screen.tsx";
import { Screen as temperature } from "./temperature/screen.tsx";

/** The screen of each instrument. */
const screens: { [Name in InstrumentName]: ComponentType<ScreenProps & { need: NeedOf<Name> }> } = {
  cubes,
  "filter-age": filterAge,
  flow,
  ice,
  seal,
  supply,
  temperature,
};

/** The instrument that a reading turn asks for. */
export function ReadingScreen(props: ScreenProps) {
  const need = props.turn.reading;
  const Screen = need && (screens[need.instrument] as ComponentType<ScreenProps & { need: typeof need }>);
  return Screen && <Screen {...props} need={need} />;
}
