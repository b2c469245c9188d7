/** What of the client a phone imports; the rest is the desk's. */
export { bodiesFor, createClient, emptyRoom, withRecord } from "../../../src/cobrowse/client/index.ts";
