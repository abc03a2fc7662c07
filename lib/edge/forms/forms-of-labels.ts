/** The forms of labels and of the papers that they are printed on. */
import {
  choice,
  type FormField,
  ID,
  NAME,
  needed,
  NUMBER,
  one,
  optional,
  LONG_TEXT,
  TEXT,
  WHOLE_NUMBER,
  YES_OR_NO,
} from "./form-fields";

export const LABEL_MARKET_WORDS = { EU: "European Union", GB: "Great Britain", US: "United States" } as const;

const MILLIMETRES = { unit: "mm" } as const;

export const LABEL_FORM: readonly FormField[] = [
  ID,
  needed("product", "Product", one("products")),
  needed("market", "Sold in", choice(LABEL_MARKET_WORDS), {
    hint: "A label for each market: each asks for other things.",
  }),
  optional("title", "Name on the label", TEXT, { hint: "Empty for the product's own." }),
  optional("function", "What it is for", TEXT, { hint: "As hand cream, or conditioner." }),
  optional("responsible", "Responsible person", TEXT, { hint: "Who answers for the product; mostly you." }),
  optional("address", "Address", TEXT),
  optional("contact", "Where harm can be reported", TEXT, {
    hint: "A telephone number, an e-mail address or a page. The United States ask for it.",
  }),
  optional("cautions", "Cautions", LONG_TEXT, { hint: "What the law and your assessor ask for, as they say it." }),
  optional("monthsOpen", "Keeps after opening", WHOLE_NUMBER, {
    unit: "months",
    hint: "Only tests show how long a product keeps.",
  }),
  optional("madeIn", "Made in", TEXT, { hint: "The country, where it is imported." }),
  optional("code", "Draw the batch code as", choice({ QR: "QR code", "Code 128": "Code 128" }), {
    none: "Not drawn",
    hint: "It stands there in letters anyway.",
  }),
  optional("gtin", "GTIN", TEXT, { hint: "Only if you have one of GS1: 8, 12, 13 or 14 digits." }),
  optional("showsPh", "The pH on the label", YES_OR_NO),
  optional("showsMade", "The day it was made on the label", YES_OR_NO),
];

export const PAPER_FORM: readonly FormField[] = [
  ID,
  NAME,
  needed("page", "Page", choice({ A4: "A4, 210 × 297 mm", Letter: "Letter, 215.9 × 279.4 mm" })),
  needed("columns", "Labels across", WHOLE_NUMBER),
  needed("rows", "Labels down", WHOLE_NUMBER),
  needed("labelWidth", "Width of one", NUMBER, MILLIMETRES),
  needed("labelHeight", "Height of one", NUMBER, MILLIMETRES),
  needed("top", "From the upper edge to the first", NUMBER, MILLIMETRES),
  needed("left", "From the left edge to the first", NUMBER, MILLIMETRES),
  optional("gapAcross", "Gap between two side by side", NUMBER, { ...MILLIMETRES, hint: "Empty for none." }),
  optional("gapDown", "Gap between two, one above the other", NUMBER, MILLIMETRES),
];
