export type Season = "spring" | "summer" | "autumn" | "winter";

/**
 * When the water filter was fitted, as well as the householder knows it. 'since-moving' means that nobody
 * changed it since they moved in during `month`: it is at least that old. Dates are 'YYYY-MM-DD' and 'YYYY-MM'.
 * A season counts as northern unless told otherwise.
 */
export type FittedWhen =
  | { by: "date"; date: string }
  | { by: "month"; month: string }
  | { by: "season"; season: Season; year: number; hemisphere?: "north" | "south" | undefined }
  | { by: "since-moving"; month: string };

/**
 * What draws on the filter: how many people, and what they take, only ice, some glasses of water as well, or all that
 * they drink. `capacity` is what is printed on the cartridge, in litres.
 */
export type FilterUse = {
  people: number;
  habit: "ice" | "glasses" | "all";
  capacity?: number | undefined;
};

export type FilterAgeReading = { kind: "filter-age"; fitted: FittedWhen; use?: FilterUse | undefined };
