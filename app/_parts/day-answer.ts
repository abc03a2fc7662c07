/** What becomes of the wish to go back to the real date. */
export type DayAnswer =
  { readonly kind: "not asked" } | { readonly kind: "done" } | { readonly kind: "refused"; readonly says: string };

export const NO_DAY_ASKED: DayAnswer = { kind: "not asked" };
