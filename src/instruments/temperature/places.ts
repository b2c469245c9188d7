/** Where a temperature is taken; `ice-maker`: where the ice is made, which may be a compartment in a door. */
export const temperaturePlaces = ["freezer", "fridge", "ice-maker"] as const;

export type TemperaturePlace = (typeof temperaturePlaces)[number];
