/** The fields of a count, as they are drawn; a browser has them without the library that reads a file. */
import { DAY, type FormField, ID, needed, optional, rows, TEXT } from "./form-fields";

export const COUNT_REASON = needed("reason", "Why it was counted", TEXT, { hint: "As the month’s end, or a spill." });
/** What the balance shows: grams or pieces without a unit, or an amount with one. */
export const GROSS = optional("gross", "Balance shows", TEXT);
/** What is counted stands in no vessel: units, and pieces of a material. */
export const COUNTED = optional("gross", "Counted", TEXT);
export const TARE = optional("tare", "Less the vessel", TEXT);

export const COUNT_FORM: readonly FormField[] = [
  ID,
  needed("day", "Counted on", DAY),
  COUNT_REASON,
  needed(
    "lines",
    "Lots",
    rows(
      1,
      needed("kind", "Kind", { kind: "hidden" }),
      needed("lot", "Lot", { kind: "hidden" }),
      needed("expected", "Written down", { kind: "hidden" }),
      GROSS,
      TARE,
    ),
  ),
];
