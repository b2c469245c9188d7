import type { Care, Texts } from "../../turn/index.ts";
import { Page } from "../screens/sharing/index.ts";

/** The record of the machine, to read, to print and to keep. */
export function MachinePage({ care, texts }: { care: Care; texts: Texts }) {
  const machine = care.machine();
  const labels = {
    name: texts("care.machine.open"),
    share: texts("care.machine.share"),
    copy: texts("care.machine.copy"),
  };
  if (!machine.parts[0]) return <p>{texts("care.machine.empty")}</p>;
  return (
    <>
      <Page handover={machine} labels={labels} texts={texts} />
      <p class="small">{texts("care.machine.kept")}</p>
    </>
  );
}
