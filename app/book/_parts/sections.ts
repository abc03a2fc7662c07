/** The sections of the book: one for each list that a maker writes by hand. Runs are written on the week. */
export const SECTIONS = [
  "products",
  "formulas",
  "labels",
  "papers",
  "materials",
  "offers",
  "suppliers",
  "lots",
  "orders",
] as const;
export type Section = (typeof SECTIONS)[number];

export const sectionOf = (segment: string): Section | null => SECTIONS.find((section) => section === segment) ?? null;

export interface SectionWords {
  readonly title: string;
  /** One of them, and several, in the middle of a sentence. */
  readonly one: string;
  readonly many: string;
  /** What is kept here, in one line. */
  readonly gist: string;
  /** What to do where there is nothing yet. */
  readonly empty: string;
  readonly add: string;
  /** What one of them cannot do without. */
  readonly needs: string;
}

export const SECTION_WORDS: Readonly<Record<Section, SectionWords>> = {
  products: {
    title: "Products",
    one: "product",
    many: "products",
    gist: "What is filled and sold: its formula, its fill, its packaging and its prices.",
    empty: "No products yet. A product needs a formula to be filled with.",
    add: "Add a product",
    needs: "It needs a name, a formula, a fill and its usual run.",
  },
  formulas: {
    title: "Formulas",
    one: "formula",
    many: "formulas",
    gist: "What goes in, in percent by weight; a formula can be a premix of another.",
    empty: "No formulas yet. Paste one as lines of text, or write it line by line.",
    add: "Add a formula",
    needs: "It needs a name, and lines that add up to 100 %.",
  },
  labels: {
    title: "Labels",
    one: "label",
    many: "labels",
    gist: "What the label of a product says besides its ingredients, for one market.",
    empty: "No labels yet. A label is of a product, for a market.",
    add: "Add a label",
    needs: "It needs its product and where that is sold.",
  },
  papers: {
    title: "Label sheets",
    one: "label sheet",
    many: "label sheets",
    gist: "The sheets of labels that you print on, measured in millimetres.",
    empty: "No label sheets yet. Measure the sheet that you buy.",
    add: "Add a label sheet",
    needs: "It needs the page, how many labels are on it, their size, and where the first one stands.",
  },
  materials: {
    title: "Materials",
    one: "material",
    many: "materials",
    gist: "Ingredients, packaging and what is used up on the way.",
    empty: "No materials yet. Write down first what goes into your best seller.",
    add: "Add a material",
    needs: "It needs a name, its kind, and whether it is weighed or counted.",
  },
  offers: {
    title: "Offers",
    one: "offer",
    many: "offers",
    gist: "Which pack of a material a supplier sells, and at what price.",
    empty: "No offers yet. An offer gives a material its price: take the last invoice.",
    add: "Add an offer",
    needs: "It needs its material, its supplier, the pack and the price.",
  },
  suppliers: {
    title: "Suppliers",
    one: "supplier",
    many: "suppliers",
    gist: "Who sells to you, how long it takes and what sending it costs.",
    empty: "No suppliers yet. Write down who you bought from last.",
    add: "Add a supplier",
    needs: "It needs a name and a lead time.",
  },
  lots: {
    title: "Lots",
    one: "lot",
    many: "lots",
    gist: "What stands on the shelf, lot by lot, with its last day of use and what it cost.",
    empty: "Nothing on the shelf yet. Add what you bought last.",
    add: "Add a lot",
    needs:
      "It needs its material, the day it came, what is left and what that cost; a last day of use where there is one.",
  },
  orders: {
    title: "Orders",
    one: "order",
    many: "orders",
    gist: "Every order, drafted, ordered, received or given up, and when it is due.",
    empty: "No orders yet. Write down what you have ordered and not received.",
    add: "Add an order",
    needs: "It needs its supplier, the day you ordered, the day it is due, and a line for each material.",
  },
};
