import { type BadFile, LEFT_OUT } from "./bench-workshop";

export const PRICES_AND_DENSITIES: readonly BadFile[] = [
  {
    rule: "MONEY-1",
    says: "shipping in words",
    changes: { "suppliers[0].shipping": "free" },
    faults: [
      'suppliers[0].shipping: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "free"',
    ],
  },
  {
    rule: "MONEY-1",
    says: "free shipping from below 0",
    changes: { "suppliers[0].shippingFreeFrom": "-60" },
    faults: [
      'suppliers[0].shippingFreeFrom: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-60"',
    ],
  },
  {
    rule: "MONEY-1",
    says: "a minimum order as a number",
    changes: { "suppliers[0].minimumOrder": 20 },
    faults: ['suppliers[0].minimumOrder: must be a decimal in double quotes, as "8.40", not 20'],
  },
  {
    rule: "MONEY-1",
    says: "a price of 0",
    changes: { "offers[0].price": "0.00" },
    faults: ["offers[0].price: must be above zero"],
  },
  {
    rule: "MONEY-1",
    says: "no price",
    changes: { "offers[0].price": LEFT_OUT },
    faults: ['offers[0].price: missing; it must be a decimal in double quotes, as "8.40"'],
  },
  {
    rule: "MONEY-1",
    says: "a price with seven decimals",
    changes: { "offers[0].price": "8.4000001" },
    faults: ["offers[0].price: 8.4000001 has more than 6 decimals"],
  },
  {
    rule: "MONEY-1",
    says: "a break price of 0",
    changes: { "offers[0].breaks[0].price": "0" },
    faults: ["offers[0].breaks[0].price: must be above zero"],
  },
  {
    rule: "MONEY-1",
    says: "a price to shops of 0",
    changes: { "products[0].priceToShops": "0" },
    faults: ["products[0].priceToShops: must be above zero"],
  },
  {
    rule: "MONEY-1",
    says: "a price to customers of 0",
    changes: { "products[0].priceToCustomers": "0.000000" },
    faults: ["products[0].priceToCustomers: must be above zero"],
  },
  {
    rule: "MONEY-1",
    says: "no cost of an order line",
    changes: { "orders[0].lines[0].cost": LEFT_OUT },
    faults: ['orders[0].lines[0].cost: missing; it must be a decimal in double quotes, as "8.40"'],
  },
  {
    rule: "QTY-3",
    says: "labour minutes below 0",
    changes: { "products[0].labourMinutesPerRun": "-45" },
    faults: [
      'products[0].labourMinutesPerRun: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-45"',
    ],
  },
  {
    rule: "QTY-3",
    says: "labour minutes as a number",
    changes: { "products[0].labourMinutesPerUnit": 1.5 },
    faults: ['products[0].labourMinutesPerUnit: must be a decimal in double quotes, as "1.5", not 1.5'],
  },
  {
    rule: "QTY-3",
    says: "a temperature as a number",
    changes: { "materials[0].addBelow": 40 },
    faults: ['materials[0].addBelow: must be a decimal in double quotes, as "1.5", not 40'],
  },
  {
    rule: "QTY-3",
    says: "a temperature with its unit",
    changes: { "materials[0].addBelow": "40 °C" },
    faults: [
      'materials[0].addBelow: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "40 °C"',
    ],
  },
  {
    rule: "QTY-1",
    says: "a density of 0",
    changes: { "materials[1].density": "0.000000" },
    faults: ["materials[1].density: must be above zero"],
  },
  {
    rule: "QTY-1",
    says: "a density with seven decimals",
    changes: { "materials[1].density": "0.9100000" },
    faults: ["materials[1].density: 0.9100000 has more than 6 decimals"],
  },
  {
    rule: "QTY-1",
    says: "a density as a number",
    changes: { "materials[1].density": 0.91 },
    faults: ['materials[1].density: must be a density in g/mL in double quotes, as "0.98", not 0.91'],
  },
  {
    rule: "QTY-1",
    says: "a density below 0",
    changes: { "materials[1].density": "-0.91" },
    faults: [
      'materials[1].density: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-0.91"',
    ],
  },
  {
    rule: "QTY-6",
    says: "a density above the limit",
    changes: { "materials[1].density": "9007199254.740992" },
    faults: ['materials[1].density: "9007199254.740992" is out of range (at most 9007199254.740991)'],
  },
  {
    rule: "QTY-5",
    says: "a faulty density is one fault, not one for every volume",
    changes: { "materials[0].density": "heavy" },
    faults: [
      'materials[0].density: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "heavy"',
    ],
  },
  {
    rule: "QTY-5",
    says: "a faulty density of a formula likewise",
    changes: { "formulas[0].density": "0" },
    faults: ["formulas[0].density: must be above zero"],
  },
];
