import { createChance, demoCodes, pick } from "../../../demo/generate/feed/index.ts";
import type { ShopShape } from "./shop-shape.ts";

/** What a shop of one language writes: headings, a name for each kind, other things, stock. */
type Language = { headings: string; names: Record<string, string>; others: string[]; stock: string[] };

const order = [
  ...["water-filter", "door-seal", "ice-bin", "supply-line", "inlet-valve", "ice-maker"],
  ...["fill-tube", "bin-sensor", "water-tank", "tank-pump", "dispenser-flap", "door-switch"],
];

/** Written apart from the product's lists, as a shop would: common practice, no source. */
const written: Record<string, [headings: string, names: string, others: string, stock: string]> = {
  English: [
    "Part number;Product name;Price;Stock;Link;Suitable for",
    "Water filter;Door seal, white;Ice bin;Supply hose;Water inlet valve;Ice maker assembly;Fill tube for ice maker;Bin sensor;Water tank;Water pump;Dispenser flap;Door switch",
    "Water filter housing;Door hinge",
    "In stock;Sold out",
  ],
  German: [
    "Artikelnummer;Bezeichnung;Preis;Verfügbarkeit;Link;Passend für",
    "Wasserfilter für Kühlschrank;Türdichtung weiß;Eiswürfelbehälter;Zulaufschlauch;Wassereinlassventil;Eiswürfelbereiter komplett;Füllrohr;Eisstandsensor;Wassertank;Wasserpumpe;Ausgabeklappe;Türschalter",
    "Gehäuse Wasserfilter;Eiswürfelbereiter Motor",
    "Auf Lager;Ausverkauft",
  ],
  French: [
    "Référence;Désignation;Prix;Disponibilité;Lien;Modèles compatibles",
    "Filtre à eau pour réfrigérateur;Joint de porte de congélateur;Réservoir à glaçons;Tuyau d'arrivée d'eau;Vanne d'arrivée d'eau;Machine à glaçons complète;Tube de remplissage;Capteur de niveau de glace;Réservoir d'eau;Pompe à eau;Volet de distributeur;Interrupteur de porte",
    "Tête de filtre à eau;Support filtre à eau",
    "En stock;Épuisé",
  ],
  Spanish: [
    "Referencia;Nombre;Precio;Disponibilidad;Enlace;Modelos compatibles",
    "Filtro de agua para frigorífico;Junta de puerta blanca;Depósito de hielo;Manguera de entrada de agua;Válvula de entrada de agua;Fabricador de hielo;Tubo de llenado;Sensor de nivel de hielo;Depósito de agua;Bomba de agua;Trampilla del dispensador;Interruptor de puerta",
    "Carcasa filtro de agua;Motor fabricador de hielo",
    "En stock;Agotado",
  ],
  Italian: [
    "Codice articolo;Descrizione;Prezzo;Disponibilità;Collegamento;Modelli compatibili",
    "Filtro acqua per frigorifero;Guarnizione porta;Contenitore ghiaccio;Tubo di carico;Elettrovalvola;Fabbricatore di ghiaccio completo;Tubo di riempimento;Sensore livello ghiaccio;Serbatoio dell'acqua;Pompa acqua;Sportellino ghiaccio;Interruttore porta",
    "Coperchio filtro acqua;Filtro acqua supporto",
    "Disponibile;Esaurito",
  ],
  Dutch: [
    "Onderdeelnummer;Omschrijving;Prijs;Voorraad;Productlink;Geschikt voor",
    "Waterfilter voor koelkast;Deurrubber wit;IJsreservoir;Toevoerslang;Inlaatventiel;IJsblokjesmaker compleet;Vulbuis;IJsniveausensor;Waterreservoir;Waterpomp;Dispenserklep;Deurschakelaar",
    "Waterfilter behuizing;Houder waterfilter",
    "Op voorraad;Uitverkocht",
  ],
  Polish: [
    "Numer części;Nazwa;Cena;Dostępność;Odnośnik;Pasuje do",
    "Filtr wody do lodówki;Uszczelka drzwi biała;Pojemnik na lód;Wąż doprowadzający wodę;Zawór wody;Kostkarka do lodu;Rurka napełniająca;Czujnik poziomu lodu;Zbiornik wody;Pompa wody;Klapka dozownika;Wyłącznik drzwi",
    "Obudowa filtr wody;Uchwyt drzwi",
    "Dostępny;Niedostępny",
  ],
};

export const languages = Object.keys(written);

/** What a shop of this language calls the kinds, and pieces that are none of them. */
export function namesIn(language: string): Language {
  const [headings = "", names = "", others = "", stock = ""] = written[language] ?? [];
  const all = names.split(";");
  return {
    headings,
    names: Object.fromEntries(order.map((kind, at) => [kind, all[at] ?? ""])),
    others: others.split(";"),
    stock: stock.split(";"),
  };
}

/** A seeded feed of 600 rows: 1 in 50 is another thing, 1 in 125 has no price. @param change is made to each heading */
export function languageShape(language: string, change: (heading: string) => string, seed = 21): ShopShape {
  const chance = createChance(seed, 1);
  const { headings, names, others, stock } = namesIn(language);
  const codes = [...demoCodes({ models: 3000, seed, dense: false })];
  const truth = new Map<string, Set<string>>();
  const lines = [headings.split(";").map(change).join(";")];
  for (let at = 0; at < 600; at++) {
    const number = `LLS-${10_000 + at}`;
    const count = 1 + Math.floor(chance() * 20);
    const start = Math.floor(chance() * (codes.length - count));
    const models = codes.slice(start, start + count);
    const isOther = chance() < 0.02;
    const name = isOther ? pick(others, chance) : pick(Object.values(names), chance);
    const price = chance() < 0.008 ? "" : `${5 + at},90 €`;
    if (!isOther) truth.set(number, new Set(models));
    lines.push([number, name, price, pick(stock, chance), `/p/${number}`, models.join(", ")].join(";"));
  }
  return { text: `${lines.join("\n")}\n`, rows: 600, truth };
}
