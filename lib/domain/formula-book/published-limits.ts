/**
 * Legal maxima that ship with the app: rows of Annex V of Regulation (EC) 1223/2009, as read in a public copy of
 * 13 May 2024. They are some rows and not the annex; the law in force and a qualified assessor decide.
 * @rule CHECK-2, CHECK-3
 */
import { type Day, dayOf } from "@/lib/domain/calendar";
import { type Fraction, ONE } from "@/lib/domain/fraction";
import { type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import type { Market, WayOfUse } from "./facts";
import { asAcid } from "./molar-mass";

export interface PublishedLimit {
  readonly market: Market;
  readonly substance: string;
  /** Null where it holds for whatever use. */
  readonly use: WayOfUse | null;
  readonly maximum: PartsPerMillion;
  readonly source: string;
  readonly copied: Day;
  /** By INCI name in small letters: grams of the substance in a gram of it. */
  readonly countsAs: ReadonlyMap<string, Fraction>;
}

export const PUBLISHED_ON = dayOf("2024-05-13") as Day;

interface Row {
  readonly entry: string;
  readonly substance: string;
  readonly use?: WayOfUse;
  /** Percent in ten-thousandths: parts per million. */
  readonly ppm: bigint;
  readonly names: Readonly<Record<string, Fraction>>;
}

const ROWS: readonly Row[] = [
  {
    entry: "1",
    substance: "benzoic acid and its sodium salt, as acid",
    use: "leave-on",
    ppm: 5_000n,
    names: { "benzoic acid": ONE, "sodium benzoate": asAcid("C7H6O2", "C7H5NaO2") },
  },
  {
    entry: "2",
    substance: "propionic acid and its salts, as acid",
    ppm: 20_000n,
    names: { "propionic acid": ONE, "sodium propionate": asAcid("C3H6O2", "C3H5NaO2") },
  },
  {
    entry: "4",
    substance: "sorbic acid and its salts, as acid",
    ppm: 6_000n,
    names: { "sorbic acid": ONE, "potassium sorbate": asAcid("C6H8O2", "C6H7KO2") },
  },
  {
    entry: "12",
    substance: "methylparaben, as acid",
    ppm: 4_000n,
    names: { methylparaben: asAcid("C7H6O3", "C8H8O3") },
  },
  {
    entry: "12",
    substance: "ethylparaben, as acid",
    ppm: 4_000n,
    names: { ethylparaben: asAcid("C7H6O3", "C9H10O3") },
  },
  {
    entry: "12a",
    substance: "propylparaben and butylparaben together, as acid",
    ppm: 1_400n,
    names: { propylparaben: asAcid("C7H6O3", "C10H12O3"), butylparaben: asAcid("C7H6O3", "C11H14O3") },
  },
  {
    entry: "13",
    substance: "dehydroacetic acid and its salts, as acid",
    ppm: 6_000n,
    names: { "dehydroacetic acid": ONE, "sodium dehydroacetate": asAcid("C8H8O4", "C8H7NaO4") },
  },
  {
    entry: "14",
    substance: "formic acid and its sodium salt, as acid",
    ppm: 5_000n,
    names: { "formic acid": ONE, "sodium formate": asAcid("CH2O2", "CHNaO2") },
  },
  {
    entry: "18",
    substance: "undecylenic acid and its salts, as acid",
    ppm: 2_000n,
    names: { "undecylenic acid": ONE },
  },
  { entry: "34", substance: "benzyl alcohol", ppm: 10_000n, names: { "benzyl alcohol": ONE } },
  { entry: "38", substance: "o-cymen-5-ol", ppm: 1_000n, names: { "o-cymen-5-ol": ONE } },
  {
    entry: "57",
    substance: "methylisothiazolinone",
    use: "rinse-off",
    ppm: 15n,
    names: { methylisothiazolinone: ONE },
  },
];

export const PUBLISHED_LIMITS: readonly PublishedLimit[] = ROWS.map(({ entry, substance, use, ppm, names }) => ({
  market: "EU",
  substance,
  use: use ?? null,
  maximum: quantity<PartsPerMillion>(ppm),
  source: `Regulation (EC) 1223/2009, Annex V, entry ${entry}`,
  copied: PUBLISHED_ON,
  countsAs: new Map(Object.entries(names)),
}));
