import type { AsideAbout, Texts, Turn } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { showPrice } from "../reading/index.ts";

/** The shop's own price of the part that an ending names, for whoever asks what it costs; nothing where there is none. */
export async function pricedAt(
  { ending }: Turn,
  services: ScreenProps["services"],
  texts: Texts,
): Promise<AsideAbout> {
  const { model = null, kind = "" } = ending?.part ?? {};
  if (!model) return {};
  const found = await services.partFor(model, kind).catch(() => null);
  const part = found?.kind === "part" ? found.part : null;
  return part?.price ? { part: part.name, price: showPrice(texts, part.price) } : {};
}
