/** Text as it is looked for: without regard to case, accents and how many spaces part the words. */
export const plainWords = (text: string): string =>
  text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/\s+/gu, " ").trim();

/** Whether each of some words stands anywhere in a text; both plain. */
export const holdsAll = (text: string, words: readonly string[]): boolean => words.every((word) => text.includes(word));
