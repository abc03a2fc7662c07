import { type BadFile, asWritten, LEFT_OUT } from "./bench-workshop";

export const PRODUCTS: readonly BadFile[] = [
  {
    rule: "FILE-1",
    says: "a product of a formula that is not there",
    changes: { "products[0].formula": "gone" },
    faults: ['products[0].formula: no formula "gone"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "no fill",
    changes: { "products[0].fill": LEFT_OUT },
    faults: ['products[0].fill: missing; it must be an amount in double quotes, as "250 mL"'],
  },
  {
    rule: "FILE-1",
    says: "a fill null",
    changes: { "products[0].fill": null },
    faults: ['products[0].fill: must be an amount in double quotes, as "250 mL", not null'],
  },
  {
    rule: "NEED-1",
    says: "a process loss of 100 %",
    changes: { "products[0].processLoss": "100" },
    faults: ["products[0].processLoss: 100 % is out of range: it must be below 100"],
  },
  {
    rule: "NEED-1",
    says: "a process loss above 100 %",
    changes: { "products[0].processLoss": "100.5" },
    faults: ["products[0].processLoss: 100.5 % is out of range: it must be below 100"],
  },
  {
    rule: "NEED-1",
    says: "a process loss with five decimals",
    changes: { "products[0].processLoss": "3.00001" },
    faults: ["products[0].processLoss: 3.00001 has more than 4 decimals"],
  },
  {
    rule: "NEED-2",
    says: "a spoilage of 100 %",
    changes: { "products[0].packaging[0].spoilage": "100.0000" },
    faults: ["products[0].packaging[0].spoilage: 100.0000 % is out of range: it must be below 100"],
  },
  {
    rule: "NEED-2",
    says: "a spoilage below 0",
    changes: { "products[0].packaging[0].spoilage": "-2" },
    faults: [
      'products[0].packaging[0].spoilage: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-2"',
    ],
  },
  {
    rule: "COST-1",
    says: "a usual run of 0",
    changes: { "products[0].usualRun": 0 },
    faults: ["products[0].usualRun: 0 is out of range 1 to 2^53-1"],
  },
  {
    rule: "COST-1",
    says: "a usual run written with a point",
    changes: { "products[0].usualRun": asWritten("24.0") },
    faults: ["products[0].usualRun: must be a whole number from 1 to 2^53-1, without a point or quotes, not 24.0"],
  },
  {
    rule: "COST-1",
    says: "a usual run written with an exponent",
    changes: { "products[0].usualRun": asWritten("2.4e1") },
    faults: ["products[0].usualRun: must be a whole number from 1 to 2^53-1, without a point or quotes, not 2.4e1"],
  },
  {
    rule: "COST-1",
    says: "a usual run in quotes",
    changes: { "products[0].usualRun": "24" },
    faults: ['products[0].usualRun: must be a whole number from 1 to 2^53-1, without a point or quotes, not "24"'],
  },
  {
    rule: "COST-1",
    says: "a usual run of minus zero",
    changes: { "products[0].usualRun": asWritten("-0") },
    faults: ["products[0].usualRun: must be a whole number from 1 to 2^53-1, without a point or quotes, not -0"],
  },
  {
    rule: "QTY-6",
    says: "a usual run of 2^53",
    changes: { "products[0].usualRun": asWritten("9007199254740992") },
    faults: ["products[0].usualRun: 9007199254740992 is out of range 1 to 2^53-1"],
  },
  {
    rule: "QTY-6",
    says: "a usual run of 400 digits",
    changes: { "products[0].usualRun": asWritten("9".repeat(400)) },
    faults: [
      "products[0].usualRun: must be a whole number from 1 to 2^53-1, without a point or quotes, not 999999999999999999999999999999999999999999999999999999999999…",
    ],
  },
  {
    rule: "COST-1",
    says: "no usual run",
    changes: { "products[0].usualRun": LEFT_OUT },
    faults: ["products[0].usualRun: missing; it must be a whole number from 1 to 2^53-1, without a point or quotes"],
  },
  {
    rule: "FILE-1",
    says: "packaging counted by another key",
    changes: { "products[0].packaging[0].amount": LEFT_OUT, "products[0].packaging[0].count": 1 },
    faults: [
      'products[0].packaging[0].amount: missing; it must be an amount in double quotes, as "250 mL"',
      "products[0].packaging[0].count: unknown key; take it out",
    ],
  },
  {
    rule: "FILE-1",
    says: "a packaging material that is not there",
    changes: { "products[0].packaging[0].material": "gone" },
    faults: ['products[0].packaging[0].material: no material "gone"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "a material twice in packaging",
    changes: { "products[0].packaging[1]": { material: "jar", amount: "1 each" } },
    faults: [
      'products[0].packaging[1].material: material "jar" (Jar 60) occurs twice in this list; products[0].packaging[0] has it already',
    ],
  },
  {
    rule: "FILE-1",
    says: "a material twice per run",
    changes: { "products[0].perRun[1]": { material: "glove", amount: "1 each" } },
    faults: [
      'products[0].perRun[1].material: material "glove" (Gloves) occurs twice in this list; products[0].perRun[0] has it already',
    ],
  },
  {
    rule: "FILE-1",
    says: "a material that is not there, twice",
    changes: {
      "products[0].perRun": [
        { material: "gone", amount: "1 each" },
        { material: "gone", amount: "1 each" },
      ],
    },
    faults: [
      'products[0].perRun[0].material: no material "gone"; add it or correct the id',
      'products[0].perRun[1].material: no material "gone"; add it or correct the id',
    ],
  },
  {
    rule: "FILE-1",
    says: "a spoilage per run",
    changes: { "products[0].perRun[0].spoilage": "2" },
    faults: ["products[0].perRun[0].spoilage: unknown key; take it out"],
  },
  {
    rule: "FILE-1",
    says: "packaging no list",
    changes: { "products[0].packaging": "jar" },
    faults: ['products[0].packaging: must be a list, not "jar"'],
  },
  {
    rule: "FILE-1",
    says: "an id instead of an item",
    changes: { "products[0].packaging[0]": "jar" },
    faults: ['products[0].packaging[0]: must be an object in braces, not "jar"'],
  },
  {
    rule: "FILE-3",
    says: "a repeated product",
    changes: { "products[1]": { id: "balm60", name: "Again", formula: "balm", fill: "1 g", usualRun: 1 } },
    faults: ['products[1].id: repeated id "balm60"; products[0] has it already'],
  },
];
