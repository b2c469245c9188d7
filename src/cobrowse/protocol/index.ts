/** What both ends and the relay speak, small enough for a phone. What the relay alone decides lies in room/. */
export { relayBounds } from "./bounds.ts";
export { type Bucket, type Pace, takeOne } from "./bucket.ts";
export { kinds, type Lane, type Role } from "./kinds.ts";
export {
  bytesOf,
  type First,
  type FromRelay,
  fits,
  type Put,
  type RoomRecord,
  readFromRelay,
  type ToRelay,
  version,
  type Wait,
  type Why,
} from "./messages.ts";
export { createReceiver, type Received, type Receiver, receive, upTo } from "./receiver.ts";
export {
  acknowledged,
  createSender,
  delayed,
  due,
  enqueue,
  nextDue,
  reconnected,
  released,
  type Sender,
} from "./sender.ts";
