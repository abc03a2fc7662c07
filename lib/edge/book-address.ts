/** Records of the book, where other pages point to them. */

/** Words that are places of their own below a section, and what a path takes for steps of its own. */
const TAKEN = new Set(["new", "compare", ".", ".."]);

/** An id as a step of an address: ids hold any characters. */
export const stepOf = (id: string): string => encodeURIComponent(TAKEN.has(id) || id.startsWith("~") ? `~${id}` : id);

export const recordAddress = (section: string, id: string): `/book/${string}` => `/book/${section}/${stepOf(id)}`;
/** A formula that does not add up yet. */
export const draftAddress = (id: string): `/book/drafts/${string}` => `/book/drafts/${stepOf(id)}`;
/** One trial of a formula. */
export const trialAddress = (formula: string, trial: string): `/book/formulas/${string}` =>
  `/book/formulas/${stepOf(formula)}/trials/${stepOf(trial)}`;
/** What to weigh for so many units of a product, with the working of each amount, as its formula stands now. */
export const weighUpAddress = (formula: string, product: string, units: bigint): `/book/formulas/${string}` =>
  `/book/formulas/${stepOf(formula)}/batch?${new URLSearchParams({ product, size: units.toString() }).toString()}`;
/** What one of a product costs. */
export const costAddress = (product: string): `/cost/${string}` => `/cost/${stepOf(product)}`;
/** A new offer of a material. */
export const newOfferAddress = (material: string): `/book/offers/new?${string}` =>
  `/book/offers/new?${new URLSearchParams({ material }).toString()}`;
