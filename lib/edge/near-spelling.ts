/** What somebody meant who typed a word with a slip of the finger. */
import MiniSearch from "minisearch";
import type { Findable } from "./find";
import { plainWords } from "./plain-words";

/** A code is what it is, so that a lot is never taken for another: words of letters alone are guessed at. */
const WORDS = /\p{L}{4,}/gu;
const LONG = 5;

/**
 * What was typed, with each word of letters that stands nowhere put as the likest word that does; null where no word is
 * like it, or all of them stand somewhere. Words of four letters may differ by one letter, longer ones by two.
 */
export function nearSpelling(all: readonly Findable[], typed: string): string | null {
  const texts = all.map(({ name, says, also = "" }) => plainWords(`${name} ${says} ${also}`));
  const known = new Set(texts.flatMap((text) => text.match(WORDS) ?? []));
  const likest = likestOf([...known]);
  const meant = plainWords(typed).replace(WORDS, (word) =>
    texts.some((text) => text.includes(word)) ? word : (likest(word) ?? word),
  );
  return meant === plainWords(typed) ? null : meant;
}

function likestOf(known: readonly string[]): (word: string) => string | undefined {
  const index = new MiniSearch<{ id: number; word: string }>({ fields: ["word"], storeFields: ["word"] });
  index.addAll(known.map((word, id) => ({ id, word })));
  return (word) => {
    const [best] = index.search(word, { fuzzy: word.length < LONG ? 1 : 2 });
    return best?.word as string | undefined;
  };
}
