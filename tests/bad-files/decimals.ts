import { type BadFile, asWritten, LEFT_OUT } from "./bench-workshop";

export const DECIMALS: readonly BadFile[] = [
  {
    rule: "MONEY-1",
    says: "money left out",
    changes: { "workshop.labourPerHour": LEFT_OUT },
    faults: ['workshop.labourPerHour: missing; it must be a decimal in double quotes, as "8.40"'],
  },
  {
    rule: "MONEY-1",
    says: "money null where it is required",
    changes: { "workshop.labourPerHour": null },
    faults: ['workshop.labourPerHour: must be a decimal in double quotes, as "8.40", not null'],
  },
  {
    rule: "MONEY-1",
    says: "money as a number",
    changes: { "workshop.labourPerHour": 14 },
    faults: ['workshop.labourPerHour: must be a decimal in double quotes, as "8.40", not 14'],
  },
  {
    rule: "MONEY-1",
    says: "money as a number with decimals, shown as it was written",
    changes: { "workshop.labourPerHour": asWritten("14.00") },
    faults: ['workshop.labourPerHour: must be a decimal in double quotes, as "8.40", not 14.00'],
  },
  {
    rule: "QTY-3",
    says: "a minus",
    changes: { "workshop.labourPerHour": "-14.00" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-14.00"',
    ],
  },
  {
    rule: "QTY-3",
    says: "a plus",
    changes: { "workshop.labourPerHour": "+14.00" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "+14.00"',
    ],
  },
  {
    rule: "QTY-3",
    says: "an exponent",
    changes: { "workshop.labourPerHour": "1.4e1" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "1.4e1"',
    ],
  },
  {
    rule: "QTY-3",
    says: "a leading zero",
    changes: { "workshop.labourPerHour": "014" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "014"',
    ],
  },
  {
    rule: "QTY-3",
    says: "no digit before the point",
    changes: { "workshop.labourPerHour": ".5" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not ".5"',
    ],
  },
  {
    rule: "QTY-3",
    says: "no digit after the point",
    changes: { "workshop.labourPerHour": "14." },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "14."',
    ],
  },
  {
    rule: "QTY-3",
    says: "a separator",
    changes: { "workshop.labourPerHour": "1,400.00" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "1,400.00"',
    ],
  },
  {
    rule: "QTY-3",
    says: "a comma for a point",
    changes: { "workshop.labourPerHour": "14,00" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "14,00"',
    ],
  },
  {
    rule: "QTY-3",
    says: "a blank before",
    changes: { "workshop.labourPerHour": " 14" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not " 14"',
    ],
  },
  {
    rule: "QTY-3",
    says: "a line end behind",
    changes: { "workshop.labourPerHour": "14\n" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "14\\u000a"',
    ],
  },
  {
    rule: "QTY-3",
    says: "digits of another script",
    changes: { "workshop.labourPerHour": "１４" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "１４"',
    ],
  },
  {
    rule: "QTY-3",
    says: "empty text",
    changes: { "workshop.labourPerHour": "" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not ""',
    ],
  },
  {
    rule: "QTY-3",
    says: "a currency sign",
    changes: { "workshop.labourPerHour": "£14.00" },
    faults: [
      'workshop.labourPerHour: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "£14.00"',
    ],
  },
  {
    rule: "QTY-3",
    says: "61 characters",
    changes: { "workshop.labourPerHour": "1".repeat(61) },
    faults: [
      'workshop.labourPerHour: the decimal "111111111111111111111111111111111111111111111111111111111111…" is longer than 60 characters',
    ],
  },
  {
    rule: "MONEY-1",
    says: "seven decimals, though the last is 0",
    changes: { "workshop.labourPerHour": "14.0000000" },
    faults: ["workshop.labourPerHour: 14.0000000 has more than 6 decimals"],
  },
  {
    rule: "QTY-6",
    says: "2^53 micro-units",
    changes: { "workshop.labourPerHour": "9007199254.740992" },
    faults: ['workshop.labourPerHour: "9007199254.740992" is out of range (at most 9007199254.740991)'],
  },
  {
    rule: "QTY-6",
    says: "a lot's value of 2^53 micro-units",
    changes: { "lots[0].value": "9007199254.740992" },
    faults: ['lots[0].value: "9007199254.740992" is out of range (at most 9007199254.740991)'],
  },
];
