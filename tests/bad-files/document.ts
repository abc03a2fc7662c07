import { type BadFile, asWritten, LEFT_OUT } from "./bench-workshop";

export const DOCUMENT: readonly BadFile[] = [
  {
    rule: "FILE-1",
    says: "format left out",
    changes: { format: LEFT_OUT },
    faults: ['format: missing; it must be "stillroom-workshop"'],
  },
  {
    rule: "FILE-1",
    says: "another format, and nothing else of it is judged",
    changes: { format: "stillroom-report", suppliers: LEFT_OUT },
    faults: ['format: "stillroom-report" is not a format this program knows; it reads "stillroom-workshop"'],
  },
  {
    rule: "FILE-1",
    says: "format no text",
    changes: { format: 1 },
    faults: ['format: must be "stillroom-workshop", not 1'],
  },
  {
    rule: "FILE-1",
    says: "version left out",
    changes: { version: LEFT_OUT },
    faults: ["version: missing; it must be the whole number 1, 2, 3, 4 or 5"],
  },
  {
    rule: "FILE-1",
    says: "a later version, and nothing else of it is judged",
    changes: { version: 2, suppliers: LEFT_OUT },
    faults: ["version: 2 is not the version of this file, which has no closedRuns, struckOff, postings; write 1"],
  },
  {
    rule: "FILE-5",
    says: "a version to come, and nothing else of it is judged",
    changes: { version: 99, suppliers: LEFT_OUT },
    faults: ["version: 99 is not a version this program knows; it reads 1, 2, 3, 4 and 5"],
  },
  {
    rule: "FILE-5",
    says: "keys of version 3 in a file of version 1, told with what else is wrong",
    changes: { "offers[1].confirmedOn": "2026-11-20", "offers[2].shelfLifeDays": null, "offers[0].price": "0" },
    faults: [
      ...["offers[1].confirmedOn", "offers[2].shelfLifeDays"].map(
        (key) =>
          `${key}: belongs to version 3 of the file, and this file says it is version 1; write 3 there or take the key out`,
      ),
      "offers[0].price: must be above zero",
    ],
  },
  {
    rule: "FILE-5",
    says: "a list of version 2 in a file of version 1",
    changes: { closedRuns: [], struckOff: [], postings: [] },
    faults: ["closedRuns", "struckOff", "postings"].map(
      (key) =>
        `${key}: belongs to version 2 of the file, and this file says it is version 1; write 2 there or take the key out`,
    ),
  },
  {
    rule: "FILE-5",
    says: "version 3 with one list of the past, which is there whole or not at all",
    changes: { version: 3, struckOff: [] },
    faults: ["closedRuns: missing; it must be a list", "postings: missing; it must be a list"],
  },
  {
    rule: "FILE-1",
    says: "version as text",
    changes: { version: "1" },
    faults: ['version: must be the whole number 1, 2, 3, 4 or 5, not "1"'],
  },
  {
    rule: "FILE-1",
    says: "version not written whole",
    changes: { version: asWritten("1.0") },
    faults: ["version: must be the whole number 1, 2, 3, 4 or 5, not 1.0"],
  },
  {
    rule: "FILE-1",
    says: "an unknown key of the document",
    changes: { recipes: [] },
    faults: ["recipes: unknown key; take it out"],
  },
  {
    rule: "FILE-1",
    says: "a key in another case",
    changes: { Runs: [], runs: LEFT_OUT },
    faults: ["runs: missing; it must be a list", "Runs: unknown key, write runs"],
  },
  {
    rule: "FILE-1",
    says: "a key that cannot be seen",
    changes: { "\u0007bell key": 1 },
    faults: ['["\\u0007bell key"]: unknown key; take it out'],
  },
  {
    rule: "FILE-1",
    says: "the workshop left out",
    changes: { workshop: LEFT_OUT },
    faults: ["workshop: missing; it must be an object"],
  },
  {
    rule: "FILE-1",
    says: "the workshop null",
    changes: { workshop: null },
    faults: ["workshop: must be an object in braces, not null"],
  },
  {
    rule: "FILE-1",
    says: "the workshop a list",
    changes: { workshop: [] },
    faults: ["workshop: must be an object in braces, not a list"],
  },
  {
    rule: "FILE-1",
    says: "a list left out, and nothing said about what refers to it",
    changes: { materials: LEFT_OUT },
    faults: ["materials: missing; it must be a list"],
  },
  { rule: "FILE-1", says: "a list null", changes: { sales: null }, faults: ["sales: must be a list, not null"] },
  {
    rule: "FILE-1",
    says: "a list an object",
    changes: { finished: {} },
    faults: ["finished: must be a list, not an object"],
  },
  {
    rule: "FILE-1",
    says: "an entry null",
    changes: { "runs[0]": null },
    faults: ["runs[0]: must be an object in braces, not null"],
  },
  {
    rule: "FILE-1",
    says: "an entry text",
    changes: { "sales[1]": "three" },
    faults: ['sales[1]: must be an object in braces, not "three"'],
  },
  {
    rule: "FILE-1",
    says: "an entry a list",
    changes: { "finished[1]": [] },
    faults: ["finished[1]: must be an object in braces, not a list"],
  },
];
