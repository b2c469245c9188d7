/** What the relay decides, pure: who may what in a room, in which order, and how often somebody may guess. */
export { type Braked, type Brakes, createBrakes } from "./brakes.ts";
export { codeFrom, readCode, shownCode } from "./code.ts";
export { isTheirs, judge, judgeJoin, type Verdict } from "./judge.ts";
export { agentsIn, codeEnds, endOf, type Member, noRoom, type Room, roomAfter, visibleTo } from "./room.ts";
export {
  createRoomLog,
  type Draft,
  laneOf,
  type Placed,
  place,
  type RoomLog,
  type Stored,
} from "./room-log.ts";
export { type Claims, readClaims, readFirst, readLater } from "./shapes.ts";
