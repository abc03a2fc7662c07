/** `is needed; write it here` begins with a capital where nothing stands before it. */
export function asSentence(words: string): string {
  const [first = "", ...rest] = words;
  return first.toUpperCase() + rest.join("");
}
