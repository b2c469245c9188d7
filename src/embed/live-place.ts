/** Where it is kept what a reload comes back to a room with: a text, or null for none. */
export type LivePlace = { read(): string | null; write(text: string | null): void };

/** What could not be kept, by key: it outlives a change of the tag's attributes, and no reload. */
const copies = new Map<string, string>();

/** Beside a session's journal. Some browsers throw on the mere mention of their storage, so nothing here ever does. */
export function createLivePlace(session: string, place: () => Storage = () => localStorage): LivePlace {
  const key = `${session}:live`;
  return {
    read: () => {
      try {
        return place().getItem(key) ?? copies.get(key) ?? null;
      } catch {
        return copies.get(key) ?? null;
      }
    },
    write: (text) => {
      copies.delete(key);
      try {
        if (text === null) place().removeItem(key);
        else place().setItem(key, text);
      } catch {
        if (text !== null) copies.set(key, text);
      }
    },
  };
}
