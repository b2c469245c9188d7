import { type WebSocket, WebSocketServer } from "ws";

/*
 * The floor of the relay: whatever comes from somebody in a room goes to everybody in it, as it is. Nothing is read,
 * judged, numbered, kept or said twice. The first message of a connection is the room's name.
 */
const rooms = new Map<string, Set<WebSocket>>();
const server = new WebSocketServer({
  port: 0,
  host: "127.0.0.1",
  perMessageDeflate: false,
  maxPayload: 4096,
});
server.on("connection", (socket) => {
  let room: Set<WebSocket> | null = null;
  socket.on("message", (data) => {
    const text = data.toString();
    if (room) for (const one of room) one.send(text);
    else {
      room = rooms.get(text) ?? new Set();
      rooms.set(text, room.add(socket));
      socket.send("in");
    }
  });
  socket.on("close", () => room?.delete(socket));
});
server.on("listening", () => process.send?.({ port: (server.address() as { port: number }).port }));
process.on("message", () => {
  const { user, system } = process.cpuUsage();
  process.send?.({ cpu: (user + system) / 1e6 });
});
process.on("disconnect", () => process.exit());
