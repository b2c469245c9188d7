/** Texts of files, by their address. */
export type Once = { read(address: string): Promise<string>; forget(address: string): void };

/**
 * Reads files, each once for all who ask. One that did not come, or is forgotten because it was not what it should be,
 * is fetched anew the next time, past every cache.
 */
export function createOnce(get: typeof fetch): Once {
  const asked = new Map<string, Promise<string>>();
  const failed = new Set<string>();

  async function fetchText(address: string): Promise<string> {
    // Nothing that a cache holds is good enough for a second try.
    const response = await get(address, { cache: failed.has(address) ? "reload" : "default" });
    if (!response.ok) throw new Error(`${response.status} for ${address}`);
    return response.text();
  }

  function forget(address: string): void {
    failed.add(address);
    asked.delete(address);
  }

  return {
    forget,
    read(address) {
      const text = asked.get(address) ?? fetchText(address);
      asked.set(address, text);
      text.catch(() => forget(address));
      return text;
    },
  };
}
