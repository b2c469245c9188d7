/** Writing into a folder that may hold what others wrote: nothing but our own is ever replaced or removed. */
export { type FileTools, isThere, Refusal, realFiles, reasonOf, removeQuietly } from "./file-tools.ts";
export { withLock } from "./lock.ts";
export { makeFolder, removeEmpty } from "./make-folder.ts";
export { ownPaths, readMarker, refuseForeign, type Written, writeMarker } from "./marker.ts";
export { type OwnFile, type WriteOptions, writeOwnFiles } from "./write-files.ts";
