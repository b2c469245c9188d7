import { between, type Chance, pick } from "../world/chance.ts";

/** What is printed on a plate: lines with their size as a share of the plate's height, and where they begin. */
export type Plate = {
  code: string;
  lines: { text: string; size: number; x: number; bold: boolean }[];
  font: string;
  ink: string;
  ground: string;
  /** Width by height. */
  shape: number;
};

const fonts = [
  "Liberation Sans",
  "Liberation Sans Narrow",
  "DejaVu Sans",
  "DejaVu Sans Condensed",
  "Nimbus Sans",
  "Nimbus Sans Narrow",
  "URW Gothic",
  "Liberation Mono",
  "DejaVu Sans Mono",
  "Noto Sans Mono",
  "Liberation Serif",
];

const labels = ["MODEL", "MODEL:", "MODEL NO.", "Model No:", "MOD.", "TYPE", "Model", "MODEL CODE"];
const serialLabels = ["SERIAL NO.", "S/N", "SERIAL", "Ser. No:", "SERIAL NUMBER"];

const digits = (chance: Chance, count: number) =>
  Array.from({ length: count }, () => Math.floor(chance() * 10)).join("");
const letters = (chance: Chance, count: number) =>
  Array.from({ length: count }, () => "ABCDEFGHJKLMNPQRSTUVWXYZ"[Math.floor(chance() * 24)]).join("");
const oneOf = <Item>(chance: Chance, items: readonly Item[]) =>
  pick(
    chance,
    items.map((item) => [item, 1] as const),
  );

/** A rating plate for a machine: its maker, model, serial number and what else such plates say, all invented. */
export function printPlate(chance: Chance, model: { code: string; brand: string }): Plate {
  const serial = oneOf(chance, [
    digits(chance, 10),
    `${letters(chance, 2)}${digits(chance, 8)}`,
    `${digits(chance, 4)} ${digits(chance, 6)} ${letters(chance, 1)}`,
  ]);
  const dark = chance() < 0.15;
  const metal = chance() < 0.3;
  const below = chance() < 0.25;
  const label = oneOf(chance, labels);
  const size = between(chance, 0.062, 0.085);
  const small = between(chance, 0.04, 0.05);
  const x = between(chance, 0.04, 0.08);
  const rest = [
    `${oneOf(chance, serialLabels)} ${serial}`,
    `${oneOf(chance, ["220-240 V ~ 50 Hz", "115V / 60Hz", "220-240V~ 50Hz 1.2A"])}  ${oneOf(chance, ["160 W", "1.5 A", "0.9 A max"])}`,
    `${oneOf(chance, ["Refrigerant", "REFRIGERANT"])} R600a  ${digits(chance, 2)} g`,
    `Total volume ${digits(chance, 3)} l   Net ${digits(chance, 3)} l`,
    `Climate class SN-N-ST-T   ${digits(chance, 2)}.${digits(chance, 1)} kg/24 h`,
    `${oneOf(chance, ["Design pressure HIGH 17.2 bar LOW 6.1 bar", "IP X4  CLASS I", "Made for household use"])}`,
    `${oneOf(chance, ["ART. ", "PRODUCT ", "Batch "])}${digits(chance, 4)}-${digits(chance, 3)}`,
  ];
  const shuffled = rest.map((text) => ({ text, key: chance() })).sort((a, b) => a.key - b.key);
  const code = below
    ? [
        { text: label, size: small, x, bold: false },
        { text: model.code, size, x, bold: chance() < 0.5 },
      ]
    : [{ text: `${label}  ${model.code}`, size, x, bold: chance() < 0.4 }];
  const others = shuffled.slice(0, 5).map(({ text }) => ({ text, size: small, x, bold: false }));
  const before = Math.floor(chance() * 2);
  return {
    code: model.code,
    lines: [
      { text: oneOf(chance, [model.brand, model.brand.toUpperCase()]), size: 0.12, x, bold: true },
      ...others.slice(0, before),
      ...code,
      ...others.slice(before),
    ],
    font: oneOf(chance, fonts),
    ink: dark ? "#e8e8e4" : oneOf(chance, ["#111", "#222a33", "#333"]),
    ground: dark ? "#25282c" : metal ? "#b4b6b8" : oneOf(chance, ["#f6f6f2", "#ffffff", "#e9ebe4"]),
    shape: between(chance, 1.35, 1.8),
  };
}
