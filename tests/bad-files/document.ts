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
    faults: ["version: missing; it must be the whole number 1 or 2"],
  },
  {
    rule: "FILE-1",
    says: "a later version, and nothing else of it is judged",
    changes: { version: 2, suppliers: LEFT_OUT },
    faults: ["version: 2 is not the version of this file, which has no closedRuns, struckOff, postings; write 1"],
  },
  {
    rule: "FILE-1",
    says: "version as text",
    changes: { version: "1" },
    faults: ['version: must be the whole number 1 or 2, not "1"'],
  },
  {
    rule: "FILE-1",
    says: "version not written whole",
    changes: { version: asWritten("1.0") },
    faults: ["version: must be the whole number 1 or 2, not 1.0"],
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
