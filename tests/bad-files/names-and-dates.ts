import { type BadFile, LEFT_OUT } from "./bench-workshop";

export const NAMES_AND_DATES: readonly BadFile[] = [
  {
    rule: "FILE-3",
    says: "no name",
    changes: { "workshop.name": LEFT_OUT },
    faults: ["workshop.name: missing; it must be a name in double quotes"],
  },
  {
    rule: "FILE-3",
    says: "a name null",
    changes: { "workshop.name": null },
    faults: ["workshop.name: must be a name in double quotes, not null"],
  },
  {
    rule: "FILE-3",
    says: "a name a number",
    changes: { "workshop.name": 12 },
    faults: ["workshop.name: must be a name in double quotes, not 12"],
  },
  {
    rule: "FILE-3",
    says: "an empty name",
    changes: { "workshop.name": "" },
    faults: ["workshop.name: must not be empty; it has 1 to 200 characters"],
  },
  {
    rule: "FILE-3",
    says: "a name of 201 characters",
    changes: { "workshop.name": "🌿".repeat(201) },
    faults: [
      'workshop.name: must have at most 200 characters; "🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿🌿…" is longer',
    ],
  },
  {
    rule: "FILE-3",
    says: "a tab in a name",
    changes: { "workshop.name": "Still\troom" },
    faults: ['workshop.name: control character or lone surrogate in "Still\\u0009room"; take it out'],
  },
  {
    rule: "FILE-3",
    says: "an escaped NUL in a name",
    changes: { "workshop.name": "Still\u0000room" },
    faults: ['workshop.name: control character or lone surrogate in "Still\\u0000room"; take it out'],
  },
  {
    rule: "FILE-3",
    says: "DEL in a name",
    changes: { "workshop.name": "Still\u007froom" },
    faults: ['workshop.name: control character or lone surrogate in "Still\\u007froom"; take it out'],
  },
  {
    rule: "FILE-3",
    says: "a C1 control in a name",
    changes: { "workshop.name": "Still\u0085room" },
    faults: ['workshop.name: control character or lone surrogate in "Still\\u0085room"; take it out'],
  },
  {
    rule: "FILE-3",
    says: "half a surrogate pair in a name",
    changes: { "workshop.name": "Still\udc00room" },
    faults: ['workshop.name: control character or lone surrogate in "Still\\udc00room"; take it out'],
  },
  {
    rule: "MONEY-2",
    says: "a currency in small letters",
    changes: { "workshop.currency": "gbp" },
    faults: ['workshop.currency: must be a currency code of three capital letters, as GBP, not "gbp"'],
  },
  {
    rule: "MONEY-2",
    says: "a currency of four letters",
    changes: { "workshop.currency": "GBPX" },
    faults: ['workshop.currency: must be a currency code of three capital letters, as GBP, not "GBPX"'],
  },
  {
    rule: "MONEY-2",
    says: "no currency",
    changes: { "workshop.currency": LEFT_OUT },
    faults: ['workshop.currency: missing; it must be a currency code in double quotes, as "GBP"'],
  },
  {
    rule: "MONEY-2",
    says: "letters of another alphabet",
    changes: { "workshop.currency": "ÅBC" },
    faults: ['workshop.currency: must be a currency code of three capital letters, as GBP, not "ÅBC"'],
  },
  {
    rule: "DAY-1",
    says: "no such day",
    changes: { "workshop.today": "2026-02-30" },
    faults: ['workshop.today: no such day "2026-02-30"'],
  },
  {
    rule: "DAY-1",
    says: "the 29th of February in a year without one",
    changes: { "workshop.today": "2027-02-29" },
    faults: ['workshop.today: no such day "2027-02-29"'],
  },
  {
    rule: "DAY-1",
    says: "month 0",
    changes: { "workshop.today": "2026-00-10" },
    faults: ['workshop.today: no such day "2026-00-10"'],
  },
  {
    rule: "DAY-1",
    says: "a date without leading zeros",
    changes: { "workshop.today": "2026-2-3" },
    faults: ['workshop.today: must be a date as 2026-11-25 (year-month-day), not "2026-2-3"'],
  },
  {
    rule: "DAY-1",
    says: "a date with a time",
    changes: { "workshop.today": "2026-11-25T00:00" },
    faults: ['workshop.today: must be a date as 2026-11-25 (year-month-day), not "2026-11-25T00:00"'],
  },
  {
    rule: "DAY-1",
    says: "a date of another order",
    changes: { "workshop.today": "25-11-2026" },
    faults: ['workshop.today: must be a date as 2026-11-25 (year-month-day), not "25-11-2026"'],
  },
  {
    rule: "DAY-1",
    says: "before 1900",
    changes: { "workshop.today": "1899-12-31" },
    faults: ["workshop.today: date 1899-12-31 is out of range: the year must be 1900 to 2999"],
  },
  {
    rule: "DAY-1",
    says: "after 2999",
    changes: { "workshop.today": "3000-01-01" },
    faults: ["workshop.today: date 3000-01-01 is out of range: the year must be 1900 to 2999"],
  },
  {
    rule: "DAY-1",
    says: "a date as a number",
    changes: { "workshop.today": 20261125 },
    faults: ['workshop.today: must be a date in double quotes, as "2026-11-25", not 20261125'],
  },
];
