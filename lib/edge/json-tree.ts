/** A JSON document as plain data. @rule FILE-1 */

/** A number that is written whole and is at most 2^53 − 1 from zero is a `number`; any other keeps its text. */
export type Json = null | boolean | string | number | OtherNumber | readonly Json[] | JsonObject;
/** In a map every key is a key like any other, `__proto__` too. */
export type JsonObject = ReadonlyMap<string, Json>;
export interface OtherNumber {
  readonly written: string;
}

/** A number as it is written: whole ones within ±(2^53 − 1) as numbers, all others as their text. */
export function numberAsWritten(written: string): number | OtherNumber {
  const value = /^(0|-?[1-9]\d{0,15})$/.test(written) ? Number(written) : Number.NaN;
  return Number.isSafeInteger(value) ? value : { written };
}
