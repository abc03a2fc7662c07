/** The forms of formulas, products, runs and the workshop's own settings. */
import {
  AMOUNT,
  choice,
  DAY,
  DAYS,
  type FormField,
  ID,
  MINUTES,
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
  LONG_TEXT,
  TEXT,
  WHOLE_NUMBER,
} from "./form-fields";
import { MARKET_WORDS, USE_WORDS } from "./fact-words";

export const FORMULA_FORM: readonly FormField[] = [
  ID,
  NAME,
  optional("density", "Density of the product at 20 °C", NUMBER, {
    unit: "g/mL",
    hint: "Needed only where you fill it by volume. Weigh 100 mL of it at 20 °C: its grams divided by 100 are g/mL.",
  }),
  needed(
    "lines",
    "What goes in",
    rows(
      1,
      // A line is of one or the other.
      optional("material", "Material", one("materials")),
      optional("formula", "Premix", one("formulas")),
      needed(
        "percent",
        "Percent by weight",
        { kind: "percent or rest" },
        { unit: "%", hint: "Type qs for the line that takes what is left to 100 %." },
      ),
      optional("phase", "Phase", TEXT),
    ),
  ),
  optional("phFrom", "Target pH from", NUMBER),
  optional("phTo", "Target pH up to", NUMBER),
  optional("use", "The product is", choice(USE_WORDS), { none: "Not said yet" }),
  optional("market", "Sold in", choice(MARKET_WORDS), {
    none: "Not said yet",
    hint: "Legal maxima are looked up there, and nowhere if you choose none.",
  }),
  optional("keepsDays", "Keeps for", WHOLE_NUMBER, {
    unit: "days",
    hint: "From the day it is made to its best before. Only tests show how long a product keeps.",
  }),
  optional(
    "phases",
    "Phases, in the order in which they are made",
    rowsCalled(
      "Phase",
      needed("name", "Name", TEXT, { hint: "A phase is called as it stands beside its lines." }),
      optional("temperature", "Goes in at", TEMPERATURE, {
        unit: "°C",
        hint: "A temperature may be written in °F, as 158 °F.",
      }),
    ),
  ),
  optional(
    "steps",
    "Steps",
    rowsCalled(
      "Step",
      needed("text", "What to do", LONG_TEXT),
      optional("phase", "In phase", TEXT),
      optional("temperature", "To", TEMPERATURE, { unit: "°C" }),
      optional("minutes", "For", NUMBER, { unit: "minutes" }),
      optional("caution", "Take care", LONG_TEXT),
    ),
  ),
  optional(
    "checks",
    "Checks before release, beside the pH",
    rowsCalled(
      "Check",
      needed("what", "What", TEXT, { hint: "What is looked at, as Viscosity or Appearance." }),
      optional("from", "From", NUMBER),
      optional("to", "Up to", NUMBER),
      optional("unit", "In", TEXT, { hint: "A figure has its unit, as mPa·s." }),
      optional("looks", "Or what is right", TEXT, {
        hint: "Where it is seen, say what is right, as smooth and white.",
      }),
    ),
  ),
];

export const PRODUCT_FORM: readonly FormField[] = [
  ID,
  NAME,
  needed("formula", "Formula", one("formulas")),
  needed("fill", "Fill of one", AMOUNT, { hint: "What one jar, tin or bottle holds, as 200 g." }),
  optional("overfill", "Overfill of one", AMOUNT, { hint: "What goes in above the fill. Empty for none." }),
  optional("processLoss", "Process loss", PERCENT, { unit: "%", hint: "The share of a batch that is lost." }),
  optional("heel", "Heel", AMOUNT, { hint: "What stays in the vessel, whatever the size of the batch." }),
  needed("usualRun", "Usual run", WHOLE_NUMBER, { unit: "units", hint: "The cost of one is worked out for so many." }),
  optional(
    "packaging",
    "Packaging of one",
    rows(
      0,
      needed("material", "Material", one("materials")),
      needed("amount", "Amount", AMOUNT),
      optional("spoilage", "Spoilage", PERCENT, {
        unit: "%",
        hint: "Spoilage is the share of the pieces handled that is spoilt.",
      }),
    ),
  ),
  optional(
    "perRun",
    "Used once a run",
    rows(0, needed("material", "Material", one("materials")), needed("amount", "Amount", AMOUNT)),
  ),
  optional("labourMinutesPerRun", "Labour for a run", MINUTES, { unit: "minutes" }),
  optional("labourMinutesPerUnit", "Labour for one", MINUTES, { unit: "minutes" }),
  optional("priceToShops", "Price to shops", MONEY, { hint: "Without tax." }),
  optional("priceToCustomers", "Price to customers", MONEY, { hint: "With tax." }),
  optional("madeInto", "Made ahead into", one("materials"), {
    hint: "Only for a premix made ahead, as a stock solution or an infused oil: what a run makes goes on the shelf as a lot of this material, and is drawn instead of making the premix anew.",
  }),
];

export const RUN_FORM: readonly FormField[] = [
  ID,
  needed("product", "Product", one("products")),
  needed("date", "Day", DAY),
  optional("sequence", "Place in the day", WHOLE_NUMBER),
  needed("units", "Units", WHOLE_NUMBER),
];

export const SETTINGS_FORM: readonly FormField[] = [
  needed("name", "Name of the workshop", TEXT),
  needed("currency", "Currency", TEXT, { hint: "Its three capital letters, as GBP." }),
  optional("today", "Set the date to", DAY, { hint: "Empty for the real date." }),
  optional("horizonDays", "Plan ahead", WHOLE_NUMBER, { unit: "days", hint: "Empty for 56 days." }),
  optional("coverDays", "Buy for", WHOLE_NUMBER, { unit: "days", hint: "Empty for as long as the plan." }),
  needed("labourPerHour", "An hour of labour", MONEY, {
    hint: "What it costs the workshop, without the tax that you reclaim.",
  }),
  needed("overheadPerHour", "Overhead for an hour", MONEY, { hint: "Without the tax that you reclaim." }),
  needed("balanceStep", "Step of the balance", AMOUNT, { hint: "The smallest weight that it shows, as 0.1 g." }),
  optional("closedDays", "Closed days", DAYS, { hint: "One date a line; on these nothing is ordered or comes in." }),
  optional("taxPercent", "Sales tax", PERCENT, { unit: "%", hint: "In the price to customers." }),
  optional("paymentFeePercent", "Payment fee", PERCENT, { unit: "%", hint: "Of what the customer pays." }),
  optional("paymentFeeFixed", "Payment fee, fixed part", MONEY, {
    hint: "For each sale, without the tax that you reclaim.",
  }),
];
