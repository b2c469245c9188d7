import type { ShopWords } from "./shop-words.ts";

/** Kinds are told from English names only so far. */
export const fr: ShopWords = {
  headings: {
    number: ["référence", "reference", "numéro de pièce", "code article", "réf"],
    name: ["désignation", "designation", "nom", "titre", "libellé", "nom du produit"],
    kind: ["catégorie", "categorie", "type de pièce", "famille"],
    price: ["prix ttc", "prix de vente", "prix"],
    currency: ["devise"],
    stock: ["disponibilité", "disponibilite", "en stock", "quantité"],
    link: ["lien", "url du produit"],
    picture: ["url de l image", "photo"],
    model: ["modèles", "modèle", "modeles", "modele", "modèles compatibles", "compatible avec", "appareils"],
    replaces: ["remplace"],
    "replaced-by": ["remplacé par"],
  },
  spoilers: { price: ["ht", "ancien", "achat", "livraison", "barré"] },
  stock: {
    "in-stock": ["en stock", "disponible", "oui"],
    few: ["stock limité", "stock faible"],
    "out-of-stock": ["en rupture", "rupture de stock", "indisponible", "épuisé", "non", "non disponible"],
  },
  kinds: {},
  before: ["pour", "avec", "de"],
  joins: ["et", "avec"],
  after: [],
  pieces: [],
  wholes: [],
};
