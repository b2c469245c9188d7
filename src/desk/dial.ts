import type { Line, OnLine } from "../cobrowse/client/index.ts";

/**
 * Dials relays by the browser's web socket.
 * @param relays those that the shop lists; another one is never followed
 */
export function createDial(relays: readonly string[], open = (address: string) => new WebSocket(address)) {
  return (on: OnLine, to?: string): Line => {
    const address = relays.find((one) => one === to) ?? relays[0] ?? "";
    const socket = open(address);
    socket.onopen = on.up;
    socket.onmessage = ({ data }) => typeof data === "string" && on.text(data);
    socket.onclose = on.down;
    return {
      send: (text) => socket.readyState === socket.OPEN && socket.send(text),
      close: () => socket.close(),
    };
  };
}
