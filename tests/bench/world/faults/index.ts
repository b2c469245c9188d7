import { coldFaults } from "./cold.ts";
import { coolingFaults } from "./cooling.ts";
import { deliveryFaults } from "./delivery.ts";
import type { Fault } from "./fault.ts";
import { iceMakerFaults } from "./ice-maker.ts";
import { leakFaults } from "./leaks.ts";
import { tankFaults } from "./tank.ts";
import { tasteFaults } from "./taste.ts";
import { valveFaults } from "./valve.ts";
import { waterFaults } from "./water.ts";

export type { Changed, Fault, Needs, Trade } from "./fault.ts";

export const faults: Fault[] = [
  ...waterFaults,
  ...valveFaults,
  ...iceMakerFaults,
  ...coldFaults,
  ...coolingFaults,
  ...deliveryFaults,
  ...tankFaults,
  ...leakFaults,
  ...tasteFaults,
];
