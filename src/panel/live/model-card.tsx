import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { Services } from "../../turn/index.ts";

type Props = {
  model: string;
  services: Services;
  /** It is none of the shop's, or there is nothing to look it up in. */
  lost(): void;
  show(model: string): ComponentChildren;
};

/** A model number that somebody suggests is shown once the shop's list has exactly that one, as that list writes it. */
export function ModelCard({ model, services, lost, show }: Props) {
  const [code, setCode] = useState<string | null>(null);
  useEffect(() => {
    let isThere = true;
    const look = async () => {
      const found = services.canLookUp() ? await services.findModel(model).catch(() => null) : null;
      if (!isThere) return;
      if (found?.kind === "exact") setCode(found.model.code);
      else lost();
    };
    void look();
    return () => {
      isThere = false;
    };
  }, [model]);
  return code === null ? null : show(code);
}
