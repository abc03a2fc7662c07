/** Whose something is, as a sentence says it: `My supplier’s`, `Imagined Ingredients’`. */
export const whose = (name: string): string => `${name}${/s$/i.test(name) ? "’" : "’s"}`;
