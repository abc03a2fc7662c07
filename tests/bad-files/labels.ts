import { type BadFile } from "./bench-workshop";

const LABEL = { id: "l", product: "balm60", market: "EU" };
const PAPER = {
  id: "a",
  name: "Sheet",
  page: "A4",
  columns: 3,
  rows: 7,
  labelWidth: "63.5",
  labelHeight: "38.1",
  top: "15.15",
  left: "7.25",
  gapAcross: "2.5",
};
const labels = (given: object) => ({ version: 5, labels: [{ ...LABEL, ...given }] });
const papers = (given: object) => ({ version: 5, papers: [{ ...PAPER, ...given }] });

export const LABELS: readonly BadFile[] = [
  {
    rule: "FILE-5",
    says: "labels and papers in a version that does not know them",
    changes: { ...labels({}), ...papers({}), version: 4 },
    faults: ["labels", "papers"].map(
      (list) =>
        `${list}: belongs to version 5 of the file, and this file says it is version 4; write 5 there or take the key out`,
    ),
  },
  {
    rule: "FILE-1",
    says: "a label of no product, for a market that there is not",
    changes: labels({ product: "gone", market: "UK" }),
    faults: [
      'labels[0].market: must be "EU" or "GB" or "US", not "UK"',
      'labels[0].product: no product "gone"; add it or correct the id',
    ],
  },
  {
    rule: "FILE-3",
    says: "two labels of one id",
    changes: { version: 5, labels: [LABEL, LABEL] },
    faults: ['labels[1].id: repeated id "l"; labels[0] has it already'],
  },
  {
    rule: "LABEL-7",
    says: "a GTIN whose last digit is wrong",
    changes: labels({ gtin: "6291041500214" }),
    faults: [
      'labels[0].gtin: "6291041500214" is no GTIN: 8, 12, 13 or 14 digits without spaces, the last of which checks the others',
    ],
  },
  {
    rule: "FILE-1",
    says: "no months after opening, and too many",
    changes: {
      version: 5,
      labels: [
        { ...LABEL, monthsOpen: 0 },
        { ...LABEL, id: "m", monthsOpen: 121 },
      ],
    },
    faults: ["labels[0].monthsOpen: 0 is out of range 1 to 120", "labels[1].monthsOpen: 121 is out of range 1 to 120"],
  },
  {
    rule: "LABEL-9",
    says: "labels that go over the page to the right",
    changes: papers({ left: "14.51" }),
    faults: ["papers[0].columns: the labels go over the page to the right by 0.01 mm; measure the sheet again"],
  },
  {
    rule: "LABEL-9",
    says: "labels that go over the page below",
    changes: papers({ page: "Letter", labelWidth: "60" }),
    faults: ["papers[0].rows: the labels go over the page below by 2.45 mm; measure the sheet again"],
  },
  {
    rule: "LABEL-9",
    says: "labels of no width, lengths in inches",
    changes: {
      version: 5,
      papers: [
        { ...PAPER, labelWidth: "0" },
        { ...PAPER, id: "b", top: '1"' },
      ],
    },
    faults: [
      'papers[1].top: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "1""',
      "papers[0].labelWidth: must be above 0",
    ],
  },
  {
    rule: "LABEL-9",
    says: "a page of 301 mm",
    changes: papers({ top: "300.1" }),
    faults: ["papers[0].top: 300.1 is out of range: a page is at most 300 mm"],
  },
];
