/** What becomes of a button that does one thing with a whole record. */
export type DeedAnswer =
  | { readonly kind: "not done" }
  | { readonly kind: "done" }
  | {
      readonly kind: "refused";
      readonly says: string;
      /** What stands in the way, each by its name. */
      readonly names: readonly string[];
    };

export const NOT_DONE: DeedAnswer = { kind: "not done" };

export const refusedDeed = (says: string): DeedAnswer => ({ kind: "refused", says, names: [] });
