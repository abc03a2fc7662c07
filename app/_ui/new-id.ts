import "server-only";

// No letters or digits that are read for one another.
const LETTERS = "23456789abcdefghjkmnpqrstuvwxyz";
const LENGTH = 10;

/** An id for a record to come, drawn with its form: a form that is sent twice has the same id twice. */
export function newId(): string {
  const drawn = crypto.getRandomValues(new Uint8Array(LENGTH));
  return [...drawn].map((byte) => LETTERS.charAt(byte % LETTERS.length)).join("");
}
