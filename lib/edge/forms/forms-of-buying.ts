/** The forms of suppliers, materials, offers, lots and orders. */
import {
  AMOUNT,
  choice,
  DAY,
  DAYS,
  type FormField,
  ID,
  LAST_DAY_OF_USE,
  MONEY,
  NAME,
  needed,
  NUMBER,
  one,
  optional,
  PERCENT,
  rows,
  rowsCalled,
  TEMPERATURE,
  TEXT,
  WHOLE_NUMBER,
  YES_OR_NO,
} from "./form-fields";
import { MARKET_WORDS, ROLE_WORDS, USE_WORDS } from "./fact-words";

const NOT_RECLAIMED = "Without the tax that you reclaim.";

export const SUPPLIER_FORM: readonly FormField[] = [
  ID,
  NAME,
  needed("leadDays", "Lead time", WHOLE_NUMBER, { unit: "days", hint: "From the day you order to the day it comes." }),
  needed("leadCounts", "The lead time counts", choice({ working: "working days", calendar: "calendar days" })),
  optional("closedDays", "Closed days", DAYS, { hint: "One date a line; on these the supplier sends nothing." }),
  optional("shipping", "Delivery of one order", MONEY, { hint: NOT_RECLAIMED }),
  optional("shippingFreeFrom", "Delivery is free from", MONEY, {
    hint: `Of goods in one order. ${NOT_RECLAIMED} Empty for never.`,
  }),
  optional("minimumOrder", "Minimum order", MONEY, {
    hint: `Of goods in one order. ${NOT_RECLAIMED} Empty for none.`,
  }),
];

export const MATERIAL_FORM: readonly FormField[] = [
  ID,
  NAME,
  needed("kind", "Kind", choice({ ingredient: "Ingredient", packaging: "Packaging", consumable: "Consumable" }), {
    hint: "It only groups the lists.",
  }),
  needed("measure", "Measured by", choice({ mass: "Weight", count: "Pieces" })),
  optional("density", "Density at 20 °C", NUMBER, {
    unit: "g/mL",
    hint: "Needed only where you buy or keep it by volume; the supplier's data sheet says it.",
  }),
  optional("safetyStock", "Safety stock", AMOUNT, { hint: "What the shelf should never fall below. Empty for none." }),
  optional("safetyDays", "Safety days", WHOLE_NUMBER, {
    unit: "days",
    hint: "How long before it is needed it should be here.",
  }),
  optional("useMin", "Use from", PERCENT, { unit: "%" }),
  optional("useMax", "Use up to", PERCENT, { unit: "%" }),
  optional("addBelow", "Add below", TEMPERATURE, { unit: "°C", hint: "Or with °F, as 104 °F: it is kept in °C." }),
  optional("phFrom", "Works from pH", NUMBER),
  optional("phTo", "Works up to pH", NUMBER),
  optional("role", "In a formula it is", choice(ROLE_WORDS), {
    none: "Not said yet",
    hint: "The checks ask for a preservative wherever there is water. They do not tell whether it protects.",
  }),
  optional("flammable", "Flammable", YES_OR_NO),
  optional("allergen", "Holds an allergen", YES_OR_NO),
  optional("eyeHazard", "Hurts the eyes", YES_OR_NO),
  optional(
    "composition",
    "What it is made of, by INCI names",
    rowsCalled(
      "Part",
      needed("inci", "INCI name", TEXT, { hint: "Write a blend in its parts, or one INCI name at 100 %." }),
      needed("percent", "Share", PERCENT, { unit: "%", hint: "The shares add up to 100 %." }),
    ),
  ),
  optional(
    "limits",
    "Legal maxima",
    rowsCalled(
      "Maximum",
      needed("substance", "Substance", TEXT),
      needed("market", "Market", choice(MARKET_WORDS)),
      optional("use", "For", choice(USE_WORDS), { none: "Either way" }),
      needed("maximum", "At most", PERCENT, { unit: "%" }),
      optional("countsAs", "Counts as", NUMBER, {
        hint: "“Counts as” is grams of the substance for each gram of the material; empty for 1.",
      }),
      needed("source", "Source", TEXT, {
        hint: "The source is where you copied the maximum. The law in force and a qualified assessor decide.",
      }),
      needed("copied", "Copied on", DAY),
    ),
  ),
  optional(
    "sheets",
    "Safety and analysis sheets",
    rowsCalled(
      "Sheet",
      needed("reference", "Reference", TEXT),
      needed("kind", "Sheet", choice({ safety: "Safety", analysis: "Analysis" })),
      optional("reviewBy", "Look again by", DAY),
    ),
  ),
];

export const OFFER_FORM: readonly FormField[] = [
  ID,
  needed("material", "Material", one("materials")),
  needed("supplier", "Supplier", one("suppliers")),
  needed("pack", "Pack", AMOUNT, { hint: "As 1 kg, 500 mL or 24 each." }),
  needed("price", "Price of one pack", MONEY, { hint: "Without delivery, and without the tax that you reclaim." }),
  optional(
    "breaks",
    "Cheaper for more packs",
    rows(
      0,
      needed("packs", "From how many packs", WHOLE_NUMBER),
      needed("price", "Price of each", MONEY, { hint: "Prices are without the tax that you reclaim." }),
    ),
  ),
  optional("minPacks", "Fewest packs", WHOLE_NUMBER, { hint: "Empty for one." }),
  optional("preferred", "Preferred for this material", YES_OR_NO),
  optional("shelfLifeDays", "Keeps after it comes", WHOLE_NUMBER, {
    unit: "days",
    hint: "The shelf life that is left on arrival. Empty where you do not know it.",
  }),
  optional("confirmedOn", "Price confirmed on", DAY, {
    hint: "The day you last saw the supplier ask this price. Empty where you do not know it.",
  }),
];

export const LOT_FORM: readonly FormField[] = [
  needed("id", "Lot", TEXT, { hint: "The number on the pack, or one of your own. It stays as it is." }),
  needed("material", "Material", one("materials")),
  needed("received", "Received", DAY),
  optional("expires", "Last day of use", LAST_DAY_OF_USE, {
    hint: "A month alone, as 2028-03, is its last day. Empty for none.",
  }),
  needed("remaining", "What is left", AMOUNT),
  needed("value", "What it cost", MONEY, {
    hint: "The part that is left, with its delivery, without the tax that you reclaim.",
  }),
];

export const ORDER_FORM: readonly FormField[] = [
  needed("id", "Order", TEXT, { hint: "A number of your own. It stays as it is." }),
  needed("supplier", "Supplier", one("suppliers")),
  needed("placed", "Ordered on", DAY),
  needed("due", "Due", DAY),
  optional("state", "State", choice({ drafted: "Drafted, not ordered yet", "given up": "Given up" }), {
    none: "Ordered",
    hint: "What is drafted or given up is not expected.",
  }),
  needed(
    "lines",
    "What comes",
    rows(
      1,
      needed("material", "Material", one("materials")),
      needed("quantity", "Quantity", AMOUNT),
      needed("cost", "Cost of the line", MONEY, { hint: "Costs are without the tax that you reclaim." }),
      optional("expires", "Last day of use", LAST_DAY_OF_USE),
      optional("offer", "Offer", one("offers")),
      optional("packs", "Packs", WHOLE_NUMBER),
      optional("received", "Come so far", AMOUNT, { hint: "What has come so far is written with its unit, as 500 g." }),
    ),
  ),
];
