import { type BadFile, asWritten, LEFT_OUT } from "./bench-workshop";

export const OFFERS: readonly BadFile[] = [
  {
    rule: "FILE-1",
    says: "an offer of a material that is not there",
    changes: { "offers[0].material": "gone" },
    faults: ['offers[0].material: no material "gone"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "an offer of nothing",
    changes: { "offers[0].material": LEFT_OUT },
    faults: ["offers[0].material: missing; it must be the id of a material in double quotes"],
  },
  {
    rule: "FILE-1",
    says: "an offer of a number",
    changes: { "offers[0].material": 3 },
    faults: ["offers[0].material: must be the id of a material in double quotes, not 3"],
  },
  {
    rule: "FILE-1",
    says: "an offer of a supplier that is not there",
    changes: { "offers[0].supplier": "S1" },
    faults: ['offers[0].supplier: no supplier "S1"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "a key of every object is no material",
    changes: { "offers[0].material": "toString" },
    faults: ['offers[0].material: no material "toString"; add it or correct the id'],
  },
  {
    rule: "FILE-1",
    says: "a break for one pack",
    changes: { "offers[0].breaks[0].packs": 1 },
    faults: ["offers[0].breaks[0].packs: 1 is out of range 2 to 2^53-1"],
  },
  {
    rule: "FILE-1",
    says: "two breaks for as many packs",
    changes: { "offers[0].breaks[1]": { packs: 5, price: "7.50" } },
    faults: ["offers[0].breaks[1].packs: 5 packs again; offers[0].breaks[0] is for as many"],
  },
  {
    rule: "FILE-1",
    says: "a break without a price",
    changes: { "offers[0].breaks[0].price": LEFT_OUT },
    faults: ['offers[0].breaks[0].price: missing; it must be a decimal in double quotes, as "8.40"'],
  },
  {
    rule: "FILE-1",
    says: "an unknown key of a break",
    changes: { "offers[0].breaks[0].pack": 5 },
    faults: ["offers[0].breaks[0].pack: unknown key; take it out"],
  },
  {
    rule: "FILE-1",
    says: "a break that is no object",
    changes: { "offers[0].breaks[0]": 5 },
    faults: ["offers[0].breaks[0]: must be an object in braces, not 5"],
  },
  {
    rule: "FILE-1",
    says: "breaks no list",
    changes: { "offers[0].breaks": { packs: 5, price: "7.90" } },
    faults: ["offers[0].breaks: must be a list, not an object"],
  },
  {
    rule: "FILE-1",
    says: "minPacks 0",
    changes: { "offers[0].minPacks": 0 },
    faults: ["offers[0].minPacks: 0 is out of range 1 to 2^53-1"],
  },
  {
    rule: "QTY-6",
    says: "minPacks 2^53",
    changes: { "offers[0].minPacks": asWritten("9007199254740992") },
    faults: ["offers[0].minPacks: 9007199254740992 is out of range 1 to 2^53-1"],
  },
  {
    rule: "FILE-1",
    says: "preferred in words",
    changes: { "offers[0].preferred": "yes" },
    faults: ['offers[0].preferred: must be true or false, not "yes"'],
  },
  {
    rule: "FILE-1",
    says: "preferred 1",
    changes: { "offers[0].preferred": 1 },
    faults: ["offers[0].preferred: must be true or false, not 1"],
  },
  {
    rule: "PLAN-7",
    says: "two preferred offers of a material",
    changes: {
      "offers[0].preferred": true,
      "offers[3]": { id: "o4", material: "oil", supplier: "s1", pack: "1 kg", price: "9", preferred: true },
    },
    faults: [
      'offers[3].preferred: offers "o1" and "o4" are both preferred for material "oil" (Quill oil); at most one may be',
    ],
  },
  {
    rule: "OFFER-1",
    says: "a shelf life that is no whole number of days",
    changes: { version: 3, "offers[0].shelfLifeDays": asWritten("1.5"), "offers[1].shelfLifeDays": "365" },
    faults: [
      "offers[0].shelfLifeDays: must be a whole number from 0 to 3660, without a point or quotes, not 1.5",
      'offers[1].shelfLifeDays: must be a whole number from 0 to 3660, without a point or quotes, not "365"',
    ],
  },
  {
    rule: "OFFER-1",
    says: "a shelf life out of range",
    changes: { version: 3, "offers[0].shelfLifeDays": 3661, "offers[1].shelfLifeDays": -1 },
    faults: [
      "offers[0].shelfLifeDays: 3661 is out of range 0 to 3660",
      "offers[1].shelfLifeDays: -1 is out of range 0 to 3660",
    ],
  },
  {
    rule: "OFFER-2",
    says: "a price confirmed on no day",
    changes: { version: 3, "offers[0].confirmedOn": "2026-02-30", "offers[1].confirmedOn": true },
    faults: [
      'offers[0].confirmedOn: no such day "2026-02-30"',
      'offers[1].confirmedOn: must be a date in double quotes, as "2026-11-25", not true',
    ],
  },
];
