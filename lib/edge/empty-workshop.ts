/**
 * The file of a workshop with nothing in it yet, held to the rules of every file once it is read: rates of zero until
 * the maker enters them, and a balance that reads tenths of a gram.
 */
export const emptyWorkshopFile = (typed: { readonly name: string; readonly currency: string }): Uint8Array =>
  new TextEncoder().encode(
    JSON.stringify({
      format: "stillroom-workshop",
      version: 1,
      workshop: { ...typed, labourPerHour: "0", overheadPerHour: "0", balanceStep: "0.1 g" },
      suppliers: [],
      materials: [],
      offers: [],
      lots: [],
      orders: [],
      formulas: [],
      products: [],
      runs: [],
      finished: [],
      sales: [],
    }),
  );
