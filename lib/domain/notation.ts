/** How figures are written on the screens; it changes no figure. @rule SHOW-1 */

/**
 * Languages and places by which numbers, money and days can be written; words stay English. Left out are those whose
 * marks changed between versions of the Unicode tables: server and browser may carry different ones.
 */
export const LOCALES = [
  "en-GB",
  "en-IE",
  "en-US",
  "en-CA",
  "en-AU",
  "en-NZ",
  "en-IN",
  "de-DE",
  "fr-FR",
  "nl-NL",
  "pl-PL",
  "pt-BR",
  "sv-SE",
] as const;
export type Locale = (typeof LOCALES)[number];

/** Grams and kilograms, or ounces and pounds. */
export const UNIT_SYSTEMS = ["metric", "US"] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

export interface Notation {
  readonly locale: Locale;
  readonly units: UnitSystem;
}

export const DEFAULT_NOTATION: Notation = { locale: "en-GB", units: "metric" };
