/** `must be a number` begins with a capital where nothing stands before it; what is needed is said to be missing. */
export function asSentence(words: string): string {
  const [first = "", ...rest] = words.replace(/^is needed; /, "missing: ").replace(/^is needed\b/, "this is needed");
  return first.toUpperCase() + rest.join("");
}

const GOES_ON = /^(is|are|must|cannot|has|needs|comes|leaves|does|counts|holds)\b/;

/** What is wrong with a field after its name: ` must be a number`, ` is missing: choose one`, `: no such day`. */
export const afterItsName = (words: string): string =>
  GOES_ON.test(words)
    ? ` ${words.replace(/^is needed; write it here$/, "is missing").replace(/^is needed; /, "is missing: ")}`
    : `: ${words}`;

/** A sentence as it goes on after a colon: `As 1 kg.` begins small there, `INCI names` does not. */
export const midSentence = (words: string): string =>
  /^\p{Lu}\p{Lu}/u.test(words) ? words : `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
