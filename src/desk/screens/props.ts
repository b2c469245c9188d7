import type { Screens } from "../../panel/frame/index.ts";
import type { Texts } from "../../turn/index.ts";
import type { DeskRooms } from "../desk-rooms.ts";
import type { RoomActs } from "../room.ts";
import type { ShopParts } from "../shop-parts.ts";

/** What every part of the desk's screen is given. */
export type DeskProps = {
  desk: DeskRooms;
  texts: Texts;
  parts: ShopParts;
  picture: Screens["picture"];
  /** RFC 3339. */
  clock(): string;
};

/** The same beside one conversation. */
export type RoomProps = DeskProps & { acts: RoomActs };
