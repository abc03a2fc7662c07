/** What a person reads for the words of a fact. */
import type { Market, Role, WayOfUse } from "@/lib/domain/formula-book/facts";

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  water: "Water, or mostly water",
  preservative: "A preservative",
  neither: "Neither",
};

export const MARKET_WORDS: Readonly<Record<Market, string>> = {
  EU: "European Union",
  GB: "Great Britain",
  US: "United States",
  CA: "Canada",
  AU: "Australia",
};

/** As it stands in a sentence: `at most 1 % in the European Union`. */
export const MARKET_IN_A_SENTENCE: Readonly<Record<Market, string>> = {
  ...MARKET_WORDS,
  EU: `the ${MARKET_WORDS.EU}`,
  US: `the ${MARKET_WORDS.US}`,
};

export const USE_WORDS: Readonly<Record<WayOfUse, string>> = { "leave-on": "Left on", "rinse-off": "Rinsed off" };
