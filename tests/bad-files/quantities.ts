import { type BadFile, LEFT_OUT } from "./bench-workshop";

export const QUANTITIES: readonly BadFile[] = [
  {
    rule: "QTY-1",
    says: "a pack of nothing",
    changes: { "offers[1].pack": "0 g" },
    faults: ["offers[1].pack: must be at least 1 µg, not 0 g"],
  },
  {
    rule: "QTY-1",
    says: "a pack of no pieces",
    changes: { "offers[2].pack": "0 each" },
    faults: ["offers[2].pack: must be at least 1 piece, not 0 each"],
  },
  {
    rule: "QTY-4",
    says: "half a microgram goes to the even 0",
    changes: { "offers[1].pack": "0.0005 mg" },
    faults: ["offers[1].pack: must be at least 1 µg, not 0.0005 mg"],
  },
  {
    rule: "QTY-1",
    says: "a pack of no volume, whatever the density",
    changes: { "materials[0].density": "x", "offers[0].pack": "0 L" },
    faults: [
      'materials[0].density: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "x"',
      "offers[0].pack: must be at least 1 µg, not 0 L",
    ],
  },
  {
    rule: "QTY-1",
    says: "a pack of nothing of a material that is not there: two faults",
    changes: { "offers[1].material": "gone", "offers[1].pack": "0 kg" },
    faults: [
      'offers[1].material: no material "gone"; add it or correct the id',
      "offers[1].pack: must be at least 1 µg, not 0 kg",
    ],
  },
  {
    rule: "QTY-5",
    says: "a volume of a material without a density",
    changes: { "offers[1].pack": "500 mL" },
    faults: [
      'offers[1].pack: 500 mL is a volume, but material "wax" (Osel wax) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-5",
    says: "a safety stock likewise",
    changes: { "materials[1].safetyStock": "1 floz-us" },
    faults: [
      'materials[1].safetyStock: 1 floz-us is a volume, but material "wax" (Osel wax) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-5",
    says: "a lot likewise",
    changes: { "lots[0].material": "wax", "lots[0].remaining": "1 L" },
    faults: [
      'lots[0].remaining: 1 L is a volume, but material "wax" (Osel wax) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-5",
    says: "an order line likewise",
    changes: { "orders[0].lines[0].quantity": "1 gal-uk" },
    faults: [
      'orders[0].lines[0].quantity: 1 gal-uk is a volume, but material "wax" (Osel wax) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-5",
    says: "a fill by volume of a formula without a density",
    changes: { "formulas[0].density": null },
    faults: [
      'products[0].fill: 60 mL is a volume, but formula "balm" (Balm) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-5",
    says: "an overfill likewise, where the fill is a weight",
    changes: { "formulas[0].density": LEFT_OUT, "products[0].fill": "60 g", "products[0].overfill": "1 mL" },
    faults: [
      'products[0].overfill: 1 mL is a volume, but formula "balm" (Balm) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-5",
    says: "a heel likewise",
    changes: { "formulas[0].density": LEFT_OUT, "products[0].fill": "60 g", "products[0].heel": "12 mL" },
    faults: [
      'products[0].heel: 12 mL is a volume, but formula "balm" (Balm) has no density; write the amount by weight or enter the density',
    ],
  },
  {
    rule: "QTY-1",
    says: "pieces of what is weighed",
    changes: { "offers[1].pack": "12 each" },
    faults: [
      'offers[1].pack: 12 each counts pieces, but material "wax" (Osel wax) is measured by mass; write it by weight, as 250 g',
    ],
  },
  {
    rule: "QTY-1",
    says: "grams of what is counted",
    changes: { "offers[2].pack": "12 g" },
    faults: ['offers[2].pack: 12 g is a mass, but material "jar" (Jar 60) is counted; write whole pieces, as 12 each'],
  },
  {
    rule: "QTY-1",
    says: "millilitres of what is counted",
    changes: { "offers[2].pack": "12 mL" },
    faults: [
      'offers[2].pack: 12 mL is a volume, but material "jar" (Jar 60) is counted; write whole pieces, as 12 each',
    ],
  },
  {
    rule: "QTY-1",
    says: "a safety stock in the wrong measure",
    changes: { "materials[2].safetyStock": "20 g" },
    faults: [
      'materials[2].safetyStock: 20 g is a mass, but material "jar" (Jar 60) is counted; write whole pieces, as 12 each',
    ],
  },
  {
    rule: "QTY-1",
    says: "a fill in pieces",
    changes: { "products[0].fill": "1 each" },
    faults: [
      'products[0].fill: 1 each counts pieces, but formula "balm" (Balm) is measured by mass; write it by weight, as 250 g',
    ],
  },
  {
    rule: "QTY-1",
    says: "a packaging item in the wrong measure",
    changes: { "products[0].packaging[0].amount": "1 g" },
    faults: [
      'products[0].packaging[0].amount: 1 g is a mass, but material "jar" (Jar 60) is counted; write whole pieces, as 12 each',
    ],
  },
  {
    rule: "QTY-1",
    says: "a faulty measure is one fault, not one for every amount",
    changes: { "materials[2].measure": "pieces" },
    faults: ['materials[2].measure: must be "mass" or "count", not "pieces"'],
  },
  {
    rule: "QTY-6",
    says: "2^53 µg",
    changes: { "lots[0].remaining": "9007199254.740992 g" },
    faults: ['lots[0].remaining: "9007199254.740992 g" is out of range (above 2^53-1 µg)'],
  },
  {
    rule: "QTY-6",
    says: "2^53 pieces",
    changes: { "offers[2].pack": "9007199254740992 each" },
    faults: ['offers[2].pack: "9007199254740992 each" is out of range (above 2^53-1 pieces)'],
  },
  {
    rule: "QTY-6",
    says: "2^53 µg through a density",
    changes: { "offers[0].pack": "9900000 L" },
    faults: ['offers[0].pack: "9900000 L" is out of range (above 2^53-1 µg)'],
  },
  {
    rule: "QTY-6",
    says: "2^53 µg in pounds",
    changes: { "offers[1].pack": "19857.3 lb", "orders[0].lines[0].quantity": "19857480 lb" },
    faults: ['orders[0].lines[0].quantity: "19857480 lb" is out of range (above 2^53-1 µg)'],
  },
  {
    rule: "QTY-1",
    says: "a fill of nothing",
    changes: { "products[0].fill": "0 mL" },
    faults: ["products[0].fill: must be at least 1 µg, not 0 mL"],
  },
  {
    rule: "QTY-1",
    says: "a packaging amount of nothing",
    changes: { "products[0].packaging[0].amount": "0 each" },
    faults: ["products[0].packaging[0].amount: must be at least 1 piece, not 0 each"],
  },
  {
    rule: "QTY-1",
    says: "a per-run amount of nothing",
    changes: { "products[0].perRun[0].amount": "0 each" },
    faults: ["products[0].perRun[0].amount: must be at least 1 piece, not 0 each"],
  },
  {
    rule: "QTY-1",
    says: "an order line of nothing",
    changes: { "orders[0].lines[0].quantity": "0.0 g" },
    faults: ["orders[0].lines[0].quantity: must be at least 1 µg, not 0.0 g"],
  },
];
