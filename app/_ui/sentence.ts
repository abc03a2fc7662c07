/** `is needed; write it here` begins with a capital where nothing stands before it. */
export function asSentence(words: string): string {
  const [first = "", ...rest] = words;
  return first.toUpperCase() + rest.join("");
}

/** A sentence as it goes on after a colon: `As 1 kg.` begins small there, `INCI names` does not. */
export const midSentence = (words: string): string =>
  /^\p{Lu}\p{Lu}/u.test(words) ? words : `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
