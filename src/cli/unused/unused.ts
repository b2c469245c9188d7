/**
 * What of one library this script never runs, in the library's own words. `Owner` is the class, function or constant
 * that a thing stands in.
 */
export type Unused = {
  /** The version that the list was made by. */
  version: string;
  /** Members of a class or of an object that nothing reads or calls, as `Owner.member`. */
  members?: string[];
  /** Calls and assignments, by what is called or assigned to, that nobody sees the effect of. */
  silent?: string[];
  /** Expressions as the library writes them, and what they always come to; with … at the end, all that begin so. */
  always?: Record<string, string>;
  /** Functions, or methods as `Class.method`, and the body that is enough here. */
  bodies?: Record<string, string>;
  /** Calls, and what nobody reads of the objects handed to them. */
  unread?: Record<string, string[]>;
};

export const no = "false";
export const yes = "true";

/** The members of one owner. */
export const of = (owner: string, ...members: string[]) => members.map((member) => `${owner}.${member}`);

/** Everything a list names. */
export function entriesOf({
  members = [],
  silent = [],
  always = {},
  bodies = {},
  unread = {},
}: Unused): string[] {
  const fields = Object.entries(unread).flatMap(([call, names]) => of(call, ...names));
  return [...members, ...silent, ...Object.keys(always), ...Object.keys(bodies), ...fields];
}
