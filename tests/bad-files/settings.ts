import { type BadFile, LEFT_OUT } from "./bench-workshop";

export const SETTINGS: readonly BadFile[] = [
  {
    rule: "FILE-1",
    says: "horizonDays below 0",
    changes: { "workshop.horizonDays": -1 },
    faults: ["workshop.horizonDays: -1 is out of range 0 to 3660"],
  },
  {
    rule: "FILE-1",
    says: "horizonDays above 3660",
    changes: { "workshop.horizonDays": 3661 },
    faults: ["workshop.horizonDays: 3661 is out of range 0 to 3660"],
  },
  {
    rule: "FILE-1",
    says: "horizonDays in quotes",
    changes: { "workshop.horizonDays": "56" },
    faults: ['workshop.horizonDays: must be a whole number from 0 to 3660, without a point or quotes, not "56"'],
  },
  {
    rule: "FILE-1",
    says: "horizonDays and a half",
    changes: { "workshop.horizonDays": 1.5 },
    faults: ["workshop.horizonDays: must be a whole number from 0 to 3660, without a point or quotes, not 1.5"],
  },
  {
    rule: "FILE-1",
    says: "coverDays above 3660",
    changes: { "workshop.coverDays": 4000 },
    faults: ["workshop.coverDays: 4000 is out of range 0 to 3660"],
  },
  {
    rule: "FILE-1",
    says: "coverDays true",
    changes: { "workshop.coverDays": true },
    faults: ["workshop.coverDays: must be a whole number from 0 to 3660, without a point or quotes, not true"],
  },
  {
    rule: "FILE-1",
    says: "closedDays no list",
    changes: { "workshop.closedDays": "2026-12-25" },
    faults: ['workshop.closedDays: must be a list of dates, as ["2026-12-25"], not "2026-12-25"'],
  },
  {
    rule: "FILE-2",
    says: "every faulty closed day",
    changes: { "workshop.closedDays": ["2026-02-30", "2026-12-25", "Boxing Day", null] },
    faults: [
      'workshop.closedDays[0]: no such day "2026-02-30"',
      'workshop.closedDays[2]: must be a date as 2026-11-25 (year-month-day), not "Boxing Day"',
      'workshop.closedDays[3]: must be a date in double quotes, as "2026-11-25", not null',
    ],
  },
  {
    rule: "FILE-1",
    says: "an unknown setting",
    changes: { "workshop.vat": "20" },
    faults: ["workshop.vat: unknown key; take it out"],
  },
  {
    rule: "QTY-1",
    says: "a balance step of nothing",
    changes: { "workshop.balanceStep": "0 g" },
    faults: ["workshop.balanceStep: must be at least 1 µg, not 0 g"],
  },
  {
    rule: "QTY-4",
    says: "a balance step that rounds to nothing",
    changes: { "workshop.balanceStep": "0.0000005 g" },
    faults: ["workshop.balanceStep: must be at least 1 µg, not 0.0000005 g"],
  },
  {
    rule: "QTY-1",
    says: "a balance step in mL",
    changes: { "workshop.balanceStep": "1 mL" },
    faults: ["workshop.balanceStep: must be a weight, as 0.1 g, not 1 mL"],
  },
  {
    rule: "QTY-1",
    says: "a balance step in pieces",
    changes: { "workshop.balanceStep": "1 each" },
    faults: ["workshop.balanceStep: must be a weight, as 0.1 g, not 1 each"],
  },
  {
    rule: "QTY-1",
    says: "no balance step",
    changes: { "workshop.balanceStep": LEFT_OUT },
    faults: ['workshop.balanceStep: missing; it must be a weight in double quotes, as "0.1 g"'],
  },
  {
    rule: "QTY-7",
    says: "tax above 100",
    changes: { "workshop.taxPercent": "100.0001" },
    faults: ["workshop.taxPercent: 100.0001 % is out of range: it must be at most 100"],
  },
  {
    rule: "QTY-7",
    says: "tax as a number",
    changes: { "workshop.taxPercent": 20 },
    faults: ['workshop.taxPercent: must be a percent in double quotes, as "2.5", not 20'],
  },
  {
    rule: "QTY-7",
    says: "tax with five decimals",
    changes: { "workshop.taxPercent": "20.00000" },
    faults: ["workshop.taxPercent: 20.00000 has more than 4 decimals"],
  },
  {
    rule: "QTY-7",
    says: "a payment fee of 100 %",
    changes: { "workshop.paymentFeePercent": "100" },
    faults: ["workshop.paymentFeePercent: 100 % is out of range: it must be below 100"],
  },
  {
    rule: "QTY-7",
    says: "a payment fee below 0",
    changes: { "workshop.paymentFeePercent": "-1.9" },
    faults: [
      'workshop.paymentFeePercent: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-1.9"',
    ],
  },
  {
    rule: "MONEY-1",
    says: "a fixed fee below 0",
    changes: { "workshop.paymentFeeFixed": "-0.20" },
    faults: [
      'workshop.paymentFeeFixed: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-0.20"',
    ],
  },
];
