/** What became of opening a workshop. Once it is open, the page goes on to it and there is nothing to say. */
export type Opening =
  | { readonly kind: "not tried" }
  | {
      readonly kind: "refused";
      readonly faults: readonly string[];
      /** What was typed, so that it stays. */
      readonly typed?: { readonly name: string; readonly currency: string };
    };

/** What stood open when the page was drawn: it is replaced, and nothing else is. */
export type Over = "nothing" | "open";

export const NOT_TRIED: Opening = { kind: "not tried" };

/** What a workshop that begins empty goes on to, where its form says so. */
export const FIRST_PRODUCT = "first product";
