import { plateFiles, plateTexts } from "virtual:plate";
import { h, render } from "preact";
import { complain } from "../loading/index.ts";
import { PlatePhoto } from "../panel/screens/photo/index.ts";
import type { GrowingTexts, PhotoGiven } from "../turn/index.ts";
import { createPlateReader } from "./plate-reader.ts";

type Policy = { createScriptURL(address: string): unknown };
type Trusted = { createPolicy(name: string, rules: { createScriptURL(address: string): string }): Policy };

/** The smallest module with one of the instructions that the reader is built of. */
const withVectors = new Uint8Array([
  0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0, 10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98,
  11,
]);

/** By folder: a page may make a policy of one name once. */
const policies = new Map<string, Policy>();

/**
 * Puts 'take a photo of the plate' into a place, where this browser can read one.
 * @param folder of the reader's files, as the tag names it
 * @returns ends it, and all that it holds
 */
export function showPhoto(place: Element, folder: string, given: PhotoGiven): () => void {
  if (!canRead()) return () => {};
  try {
    const files = new URL(`${folder}/${plateFiles.version}/`.replace("//", "/"), document.baseURI);
    // A browser starts workers from the page's own host alone.
    if (files.origin !== location.origin) throw new Error("it is not on this page's own host");
    const trusted = trustedIn(files.href);
    (given.texts as GrowingTexts).add(plateTexts[given.texts("ui.locale")] ?? {});
    render(
      h(PlatePhoto, { ...given, reader: createPlateReader(files.href, plateFiles.bytes, trusted) }),
      place,
    );
  } catch (problem) {
    complain(`attribute "plate-reader": photos are not read, because ${(problem as Error).message}.`);
  }
  return () => render(null, place);
}

function canRead(): boolean {
  try {
    return (
      typeof Worker === "function" && "createImageBitmap" in globalThis && WebAssembly.validate(withVectors)
    );
  } catch {
    return false;
  }
}

/** Addresses in one folder, as a page wants them that turns no text into code (Trusted Types). @throws where it allows none */
function trustedIn(folder: string): (address: string) => string {
  const types = (globalThis as { trustedTypes?: Trusted }).trustedTypes;
  if (!types) return (address) => address;
  const createScriptURL = (address: string) => {
    if (!address.startsWith(folder)) throw new Error("Not one of ours");
    return address;
  };
  const policy = policies.get(folder) ?? types.createPolicy("fridgeside-plate", { createScriptURL });
  policies.set(folder, policy);
  return (address) => policy.createScriptURL(address) as string;
}
