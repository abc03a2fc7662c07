import { type BadFile } from "./bench-workshop";

export const AMOUNTS: readonly BadFile[] = [
  {
    rule: "QTY-3",
    says: "no unit",
    changes: { "offers[1].pack": "500" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "500"'],
  },
  {
    rule: "QTY-3",
    says: "no blank",
    changes: { "offers[1].pack": "500g" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "500g"'],
  },
  {
    rule: "QTY-3",
    says: "two blanks",
    changes: { "offers[1].pack": "500  g" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "500  g"'],
  },
  {
    rule: "QTY-3",
    says: "a tab for a blank",
    changes: { "offers[1].pack": "500\tg" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "500\\u0009g"'],
  },
  {
    rule: "QTY-3",
    says: "a blank behind",
    changes: { "offers[1].pack": "500 g " },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "500 g "'],
  },
  {
    rule: "QTY-3",
    says: "a no-break space",
    changes: { "offers[1].pack": "500\u00a0g" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "500 g"'],
  },
  {
    rule: "QTY-3",
    says: "an exponent in an amount",
    changes: { "offers[1].pack": "5e2 g" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "5e2 g"'],
  },
  {
    rule: "QTY-3",
    says: "a minus in an amount",
    changes: { "offers[1].pack": "-500 g" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "-500 g"'],
  },
  {
    rule: "QTY-3",
    says: "a leading zero in an amount",
    changes: { "offers[1].pack": "0500 g" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "0500 g"'],
  },
  {
    rule: "QTY-3",
    says: "61 digits",
    changes: { "offers[1].pack": `0.${"0".repeat(59)} g` },
    faults: [
      'offers[1].pack: the decimal "0.0000000000000000000000000000000000000000000000000000000000…" is longer than 60 characters',
    ],
  },
  {
    rule: "QTY-3",
    says: "an amount as a number",
    changes: { "offers[1].pack": 500 },
    faults: ['offers[1].pack: must be an amount in double quotes, as "250 mL", not 500'],
  },
  {
    rule: "QTY-3",
    says: "an amount null",
    changes: { "offers[1].pack": null },
    faults: ['offers[1].pack: must be an amount in double quotes, as "250 mL", not null'],
  },
  {
    rule: "QTY-3",
    says: "two amounts",
    changes: { "offers[1].pack": "1 lb 2 oz" },
    faults: ['offers[1].pack: must be a plain decimal, one space and a unit, as 250 mL, not "1 lb 2 oz"'],
  },
  {
    rule: "QTY-2",
    says: "a unit that nobody knows",
    changes: { "offers[1].pack": "2 cups" },
    faults: [
      'offers[1].pack: unknown unit "cups", write one of mg, g, kg, oz, lb, mL, L, floz-us, gal-us, floz-uk, gal-uk, each',
    ],
  },
  {
    rule: "QTY-2",
    says: "ml for mL",
    changes: { "offers[0].pack": "250 ml" },
    faults: ['offers[0].pack: unknown unit "ml", write mL'],
  },
  {
    rule: "QTY-2",
    says: "l for L",
    changes: { "offers[0].pack": "1 l" },
    faults: ['offers[0].pack: unknown unit "l", write L'],
  },
  {
    rule: "QTY-2",
    says: "KG for kg",
    changes: { "offers[1].pack": "1 KG" },
    faults: ['offers[1].pack: unknown unit "KG", write kg'],
  },
  {
    rule: "QTY-2",
    says: "Each for each",
    changes: { "offers[2].pack": "12 Each" },
    faults: ['offers[2].pack: unknown unit "Each", write each'],
  },
  {
    rule: "QTY-2",
    says: "grams for g",
    changes: { "offers[1].pack": "500 grams" },
    faults: ['offers[1].pack: unknown unit "grams", write g'],
  },
  {
    rule: "QTY-2",
    says: "a gallon of no country",
    changes: { "offers[0].pack": "1 gal" },
    faults: ['offers[0].pack: unknown unit "gal", write gal-us or gal-uk'],
  },
  {
    rule: "QTY-2",
    says: "pcs for each",
    changes: { "offers[2].pack": "12 pcs" },
    faults: ['offers[2].pack: unknown unit "pcs", write each'],
  },
  {
    rule: "QTY-2",
    says: "a key of every object is no unit",
    changes: { "offers[1].pack": "1 constructor" },
    faults: [
      'offers[1].pack: unknown unit "constructor", write one of mg, g, kg, oz, lb, mL, L, floz-us, gal-us, floz-uk, gal-uk, each',
    ],
  },
  {
    rule: "QTY-3",
    says: "half a piece",
    changes: { "offers[2].pack": "12.5 each" },
    faults: [
      "offers[2].pack: 12.5 each is not a whole number of pieces as it is written; write one without a point, as 12 each",
    ],
  },
  {
    rule: "QTY-3",
    says: "pieces written with a point",
    changes: { "offers[2].pack": "12.0 each" },
    faults: [
      "offers[2].pack: 12.0 each is not a whole number of pieces as it is written; write one without a point, as 12 each",
    ],
  },
];
