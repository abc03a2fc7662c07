/**
 * Which known name a typed name may stand for: without regard to case, accents, punctuation, the order of words and
 * singular or plural. A name is only ever offered; where several could be meant, all of them are.
 */
export interface Named {
  readonly name: string;
}

export type NameMatch<T> =
  /** The same words. */
  | { readonly kind: "exact"; readonly match: T }
  /** One name has all the words of the other, or differs in a letter, and no other name does. */
  | { readonly kind: "likely"; readonly match: T }
  | { readonly kind: "several"; readonly candidates: readonly T[] }
  | { readonly kind: "none" };

/** Generic names of one thing, INCI and everyday. (Common practice, no source.) */
const SAME_WORD: ReadonlyMap<string, string> = new Map([
  ["aqua", "water"],
  ["glycerine", "glycerin"],
  ["glycerol", "glycerin"],
]);

/** Words that say what sort of thing it is and not which: two names are not alike for sharing them. */
const SORTS = new Set(
  "oil butter wax extract powder acid alcohol water seed fruit leaf root flower kernel and of the in with organic refined unrefined raw pure natural".split(
    " ",
  ),
);

const MOST_CANDIDATES = 5;
const LONGEST_NAME = 200;

/** The words of a name, each once. */
export function wordsOf(name: string): ReadonlySet<string> {
  const plain = name.slice(0, LONGEST_NAME).normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/['’]/g, "");
  return new Set((plain.match(/[\p{L}\p{N}]+/gu) ?? []).map(singular).map((word) => SAME_WORD.get(word) ?? word));
}

/** Both names are cut in the same way, so that it need not be right, only the same. */
const singular = (word: string): string =>
  word.replace(/(?<=\p{L}{2})ies$/u, "y").replace(/(?<=\p{L}{2}[^sui])s$/u, "");

interface Entry<T> {
  readonly named: T;
  readonly words: ReadonlySet<string>;
}

/** Looks names up among those that are known. Looking up takes no longer for many names than for few. */
export function nameMatcher<T extends Named>(known: readonly T[]): (typed: string) => NameMatch<T> {
  const entries = known.map((named): Entry<T> => ({ named, words: wordsOf(named.name) }));
  const byKey = grouped(entries, ({ words }) => [keyOf(words)]);
  const byWord = grouped(entries, ({ words }) => [...words]);
  const byLength = grouped(
    [...byWord.keys()].map((word) => ({ word })),
    ({ word }) => [String(word.length)],
  );
  const entriesWith = (word: string): readonly Entry<T>[] => byWord.get(word) ?? [];
  const spelledLike = (word: string): readonly string[] =>
    [word.length - 1, word.length, word.length + 1]
      .flatMap((length) => byLength.get(String(length)) ?? [])
      .map(({ word: other }) => other)
      .filter((other) => differByOne(word, other));

  return (typed) => {
    const words = wordsOf(typed);
    if (words.size === 0) return { kind: "none" };
    const same = byKey.get(keyOf(words)) ?? [];
    if (same.length > 0) return matchOf(same, "exact");
    const near = new Set([...words].flatMap(entriesWith).filter((entry) => isPartOfOther(words, entry.words)));
    if (near.size > 0) return matchOf([...near], "likely");
    return matchOf(misspelt(words, spelledLike, entriesWith), "likely");
  };
}

function matchOf<T>(entries: readonly Entry<T>[], sure: "exact" | "likely"): NameMatch<T> {
  const [first, ...others] = entries;
  if (first === undefined) return { kind: "none" };
  if (others.length === 0) return { kind: sure, match: first.named };
  return { kind: "several", candidates: entries.slice(0, MOST_CANDIDATES).map(({ named }) => named) };
}

const keyOf = (words: ReadonlySet<string>): string => [...words].sort().join(" ");

function grouped<E>(entries: readonly E[], keysOf: (entry: E) => readonly string[]): ReadonlyMap<string, readonly E[]> {
  const groups = new Map<string, E[]>();
  for (const entry of entries) {
    for (const key of keysOf(entry)) {
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [entry]);
      else group.push(entry);
    }
  }
  return groups;
}

const telling = (words: ReadonlySet<string>): readonly string[] => [...words].filter((word) => !SORTS.has(word));

/** One has every telling word of the other, and there is one. */
function isPartOfOther(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  const [ones, others] = [telling(one), telling(other)];
  if (ones.length === 0 || others.length === 0) return false;
  return ones.every((word) => other.has(word)) || others.every((word) => one.has(word));
}

const SHORTEST_MISSPELT = 5;

/** Names with the same words but for a letter in those that are long enough. */
function misspelt<T>(
  words: ReadonlySet<string>,
  spelledLike: (word: string) => readonly string[],
  entriesWith: (word: string) => readonly Entry<T>[],
): readonly Entry<T>[] {
  const found = new Set<Entry<T>>();
  for (const word of telling(words)) {
    if (word.length < SHORTEST_MISSPELT || /\d/.test(word)) continue;
    for (const other of spelledLike(word)) {
      if (SORTS.has(other)) continue;
      const mended = new Set([...words].map((one) => (one === word ? other : one)));
      for (const entry of entriesWith(other)) if (isPartOfOther(mended, entry.words)) found.add(entry);
    }
  }
  return [...found];
}

/** One letter is changed, put in or left out. */
export function differByOne(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (long.length - short.length > 1 || short === long) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  return short.slice(long.length === short.length ? at + 1 : at) === long.slice(at + 1);
}
