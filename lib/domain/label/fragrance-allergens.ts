/**
 * Fragrance substances that a label names: entries of Annex III of Regulation (EC) 1223/2009 as amended by Commission
 * Regulation (EU) 2023/1545 of 26 July 2023 (OJ L 188, 27.7.2023, p. 1). Read on 28 November 2026 in a third party's
 * transcription of the regulation and of the consolidated annex, not in the Official Journal; a corrigendum of
 * 7 November 2025 was not read. Entry 46 is for oral products and is left out. The law in force and a qualified assessor
 * decide. @rule LABEL-3
 */
import { type Day, dayOf } from "@/lib/domain/calendar";

export interface FragranceAllergen {
  readonly entry: number;
  /** The name that the label bears. */
  readonly label: string;
  /** What counts towards it, the label's own name among them, in small letters. */
  readonly names: readonly string[];
}

export const ALLERGENS_READ_ON = dayOf("2026-11-28") as Day;

/** The entry, the name on the label, other names that the entry holds. */
const ROWS: readonly (readonly [number, string, ...string[]])[] = [
  [45, "Benzyl Alcohol"],
  [67, "Amyl Cinnamal"],
  [69, "Cinnamyl Alcohol"],
  [70, "Citral", "Geranial", "Neral"],
  [71, "Eugenol"],
  [72, "Hydroxycitronellal"],
  [73, "Isoeugenol", "trans-Isoeugenol", "cis-Isoeugenol"],
  [74, "Amylcinnamyl Alcohol"],
  [75, "Benzyl Salicylate"],
  [76, "Cinnamal"],
  [77, "Coumarin"],
  [78, "Geraniol"],
  [80, "Anise Alcohol"],
  [81, "Benzyl Cinnamate"],
  [82, "Farnesol"],
  [84, "Linalool"],
  [85, "Benzyl Benzoate"],
  [86, "Citronellol"],
  [87, "Hexyl Cinnamal"],
  [88, "Limonene", "d-Limonene", "l-Limonene", "Dipentene"],
  [89, "Methyl 2-Octynoate"],
  [90, "Alpha-Isomethyl Ionone"],
  [91, "Evernia Prunastri Extract"],
  [92, "Evernia Furfuracea Extract"],
  [109, "Pinus Mugo", "Pinus Mugo Leaf Oil", "Pinus Mugo Twig Leaf Extract", "Pinus Mugo Twig Oil"],
  [114, "Pinus Pumila", "Pinus Pumila Needle Extract", "Pinus Pumila Twig Leaf Extract", "Pinus Pumila Twig Leaf Oil"],
  [
    122,
    "Cedrus Atlantica Oil/Extract",
    "Cedrus Atlantica Bark Extract",
    "Cedrus Atlantica Bark Oil",
    "Cedrus Atlantica Bark Water",
    "Cedrus Atlantica Leaf Extract",
    "Cedrus Atlantica Wood Extract",
    "Cedrus Atlantica Wood Oil",
  ],
  [124, "Turpentine"],
  [131, "Alpha-Terpinene"],
  [133, "Terpinolene"],
  [
    154,
    "Myroxylon Pereirae Oil/Extract",
    "Myroxylon Balsamum Pereirae Balsam Extract",
    "Myroxylon Balsamum Pereirae Balsam Oil",
    "Myroxylon Pereirae Oil",
    "Myroxylon Pereirae Resin Extract",
    "Myroxylon Pereirae Resin",
  ],
  [
    157,
    "Rose Ketones",
    "Alpha-Damascone",
    "Damascone",
    "delta-Damascone",
    "cis-beta-Damascone",
    "trans-beta-Damascone",
  ],
  [175, "3-Propylidenephthalide"],
  [196, "Lippia Citriodora Absolute"],
  [324, "Methyl Salicylate"],
  [327, "Acetyl Cedrene"],
  [328, "Amyl Salicylate"],
  [329, "Anethole", "trans-Anethole"],
  [330, "Benzaldehyde"],
  [331, "Camphor"],
  [332, "Beta-Caryophyllene"],
  [333, "Carvone"],
  [334, "Dimethyl Phenethyl Acetate"],
  [335, "Hexadecanolactone"],
  [336, "Hexamethylindanopyran"],
  [337, "Linalyl Acetate"],
  [338, "Menthol", "dl-Menthol", "l-Menthol", "d-Menthol"],
  [339, "Trimethylcyclopentenyl Methylisopentenol"],
  [340, "Salicylaldehyde"],
  [341, "Santalol", "alpha-Santalol", "beta-Santalol"],
  [342, "Sclareol"],
  [343, "Terpineol", "alpha-Terpineol", "beta-Terpineol", "gamma-Terpineol"],
  [344, "Tetramethyl Acetyloctahydronaphthalenes"],
  [345, "Trimethylbenzenepropanol"],
  [346, "Vanillin"],
  [347, "Cananga Odorata Oil/Extract", "Cananga Odorata Flower Extract", "Cananga Odorata Flower Oil"],
  [348, "Cinnamomum Cassia Leaf Oil"],
  [349, "Cinnamomum Zeylanicum Bark Oil"],
  [350, "Citrus Aurantium Flower Oil", "Citrus Aurantium Amara Flower Oil", "Citrus Aurantium Dulcis Flower Oil"],
  [
    351,
    "Citrus Aurantium Peel Oil",
    "Citrus Aurantium Amara Peel Oil",
    "Citrus Aurantium Dulcis Peel Oil",
    "Citrus Sinensis Peel Oil",
  ],
  [352, "Citrus Aurantium Bergamia Peel Oil"],
  [353, "Citrus Limon Peel Oil"],
  [354, "Lemongrass Oil", "Cymbopogon Schoenanthus Oil", "Cymbopogon Flexuosus Oil", "Cymbopogon Citratus Leaf Oil"],
  [355, "Eucalyptus Globulus Oil", "Eucalyptus Globulus Leaf Oil", "Eucalyptus Globulus Leaf/Twig Oil"],
  [
    356,
    "Eugenia Caryophyllus Oil",
    "Eugenia Caryophyllus Leaf Oil",
    "Eugenia Caryophyllus Flower Oil",
    "Eugenia Caryophyllus Stem Oil",
    "Eugenia Caryophyllus Bud Oil",
  ],
  [
    357,
    "Jasmine Oil/Extract",
    "Jasminum Grandiflorum Flower Extract",
    "Jasminum Officinale Oil",
    "Jasminum Officinale Flower Extract",
  ],
  [358, "Juniperus Virginiana Oil", "Juniperus Virginiana Wood Oil"],
  [359, "Laurus Nobilis Leaf Oil"],
  [
    360,
    "Lavandula Oil/Extract",
    "Lavandula Hybrida Oil",
    "Lavandula Hybrida Extract",
    "Lavandula Hybrida Flower Extract",
    "Lavandula Intermedia Flower/Leaf/Stem Extract",
    "Lavandula Intermedia Flower/Leaf/Stem Oil",
    "Lavandula Intermedia Oil",
    "Lavandula Angustifolia Oil",
    "Lavandula Angustifolia Flower/Leaf/Stem Extract",
  ],
  [361, "Mentha Piperita Oil"],
  [362, "Mentha Viridis Leaf Oil"],
  [
    363,
    "Narcissus Extract",
    "Narcissus Poeticus Extract",
    "Narcissus Pseudonarcissus Flower Extract",
    "Narcissus Jonquilla Extract",
    "Narcissus Tazetta Extract",
  ],
  [364, "Pelargonium Graveolens Flower Oil"],
  [365, "Pogostemon Cablin Oil"],
  [
    366,
    "Rose Flower Oil/Extract",
    "Rosa Damascena Flower Oil",
    "Rosa Damascena Flower Extract",
    "Rosa Alba Flower Oil",
    "Rosa Alba Flower Extract",
    "Rosa Canina Flower Oil",
    "Rosa Centifolia Flower Oil",
    "Rosa Centifolia Flower Extract",
    "Rosa Gallica Flower Oil",
    "Rosa Moschata Flower Oil",
    "Rosa Rugosa Flower Oil",
  ],
  [367, "Santalum Album Oil"],
  [368, "Eugenyl Acetate"],
  [369, "Geranyl Acetate"],
  [370, "Isoeugenyl Acetate"],
  [371, "Pinene", "alpha-Pinene", "beta-Pinene"],
];

/** A name as it is compared: small letters, one space between words. */
export const inciKey = (inci: string): string => inci.trim().replace(/\s+/g, " ").toLowerCase();

export const FRAGRANCE_ALLERGENS: readonly FragranceAllergen[] = ROWS.map(([entry, label, ...others]) => ({
  entry,
  label,
  names: [label, ...others].map(inciKey),
}));

const BY_NAME: ReadonlyMap<string, FragranceAllergen> = new Map(
  FRAGRANCE_ALLERGENS.flatMap((allergen) => allergen.names.map((name) => [name, allergen] as const)),
);

/** The entry that holds a substance of this INCI name, or null. */
export const allergenNamed = (inci: string): FragranceAllergen | null => BY_NAME.get(inciKey(inci)) ?? null;
