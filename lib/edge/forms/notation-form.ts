/** The form that says how figures are written. */
import { LOCALES, type Notation, UNIT_SYSTEMS } from "@/lib/domain/notation";
import { textIn } from "./week-forms";

export const NOTATION_FIELDS = ["locale", "units"] as const;

/** Null with what is wrong where a choice is none of those offered. @rule SHOW-1 */
export function readNotation(
  form: Pick<FormData, "get">,
):
  | { readonly asked: Notation }
  | { readonly faults: Readonly<Partial<Record<(typeof NOTATION_FIELDS)[number], string>>> } {
  const locale = LOCALES.find((each) => each === textIn(form, "locale"));
  const units = UNIT_SYSTEMS.find((each) => each === textIn(form, "units"));
  if (locale !== undefined && units !== undefined) return { asked: { locale, units } };
  return {
    faults: {
      ...(locale === undefined && { locale: "is needed; choose one" }),
      ...(units === undefined && { units: "is needed; choose one" }),
    },
  };
}
