/** Whether a fetched file means to be a manifest, and not a whole catalogue in one file. It is asked before the code that reads one is there. */
export const isManifest = (json: unknown) =>
  typeof json === "object" && json !== null && "format" in json && !("parts" in json);
