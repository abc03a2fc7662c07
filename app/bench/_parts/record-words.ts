/** Figures and moments as the record has them. */
export type Grams = (amount: bigint) => string;

/** A moment in universal time, as the record keeps it. */
export const momentShown = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
