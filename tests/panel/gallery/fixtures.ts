import { chatFixtures } from "./chat-fixtures.ts";
import { endingFixtures } from "./ending-fixtures.ts";
import { measureFixtures } from "./measure-fixtures.ts";
import { sealFixtures } from "./seal-fixtures.ts";

/** Every kind of turn in every state that can be looked at. */
export const fixtures = { ...chatFixtures, ...measureFixtures, ...sealFixtures, ...endingFixtures };
