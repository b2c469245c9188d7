import type { Line, OnLine } from "../cobrowse/client/index.ts";

/** Dials a relay by the browser's web socket. @throws where the page's policy does not allow it */
export function dialSocket(address: string, on: OnLine): Line {
  const socket = new WebSocket(address);
  socket.onopen = () => on.up();
  socket.onmessage = ({ data }) => typeof data === "string" && on.text(data);
  // An error is always followed by this.
  socket.onclose = () => on.down();
  return {
    send: (text) => socket.readyState === WebSocket.OPEN && socket.send(text),
    close: () => socket.close(),
  };
}
