/** A source of choices for invented workshops: from a seed, or from fast-check's own generator. */

export interface Dice {
  /** A whole number from `least` to `most`, both included. */
  readonly whole: (least: number, most: number) => number;
}

/** Dice that fall the same way for the same seed: xorshift with 13, 17, 5 (Marsaglia 2003, "Xorshift RNGs", J. Stat. Softw. 8). */
export function diceFrom(seed: number): Dice {
  // Any start but zero will do; neighbouring seeds are spread apart before the first throw.
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bf03635) | 0 || 1;
  const next = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
  for (let throws = 0; throws < 8; throws += 1) next();
  return { whole: (least, most) => least + (next() % (most - least + 1)) };
}

export function pick<T>(dice: Dice, choices: readonly T[]): T {
  if (choices.length === 0) throw new Error("there is nothing to pick from");
  // Within the list, as just checked; `undefined` may itself be one of the choices.
  return choices[dice.whole(0, choices.length - 1)] as T;
}

export const chance = (dice: Dice, percent: number): boolean => dice.whole(1, 100) <= percent;

export const several = <T>(count: number, make: (index: number) => T): T[] =>
  Array.from({ length: count }, (_, index) => make(index));

/** The same things in another order. */
export function shuffled<T>(dice: Dice, things: readonly T[]): T[] {
  const rest = [...things];
  return several(rest.length, () => rest.splice(dice.whole(0, rest.length - 1), 1)).flat();
}

/** A field that may be left out, null, or there. */
export function perhaps<K extends string, V>(
  dice: Dice,
  key: K,
  percent: number,
  value: () => V,
): { [Key in K]?: V | null } {
  if (chance(dice, percent)) return { [key]: value() } as { [Key in K]?: V };
  return chance(dice, 30) ? ({ [key]: null } as { [Key in K]?: null }) : {};
}

/** Ids that a careless order or a careless object would get wrong, beside plain ones. */
const AWKWARD_IDS = [
  "__proto__",
  "constructor",
  "toString",
  "～a",
  "🌿a",
  "🌿",
  "～",
  "é",
  "e\u0301",
  "ﬀ",
  "Zed",
  "zed",
  "a b",
  "0",
  "-1",
  "10",
  "9",
];

/** So many different ids. */
export function idsFor(dice: Dice, prefix: string, count: number): string[] {
  const plain = several(count, (index) => `${prefix}${String(index + 1)}`);
  const awkward = shuffled(dice, AWKWARD_IDS);
  return plain.map((id) => (chance(dice, 20) ? (awkward.pop() ?? id) : id));
}

/** A decimal below 10^whole digits, with at most so many decimals, sometimes with zeros at its end; above zero. */
export function decimalText(dice: Dice, most: number, decimals: number): string {
  const places = dice.whole(0, decimals);
  const ones = dice.whole(0, most);
  if (places === 0) return String(Math.max(1, ones));
  const digits = several(places, () => String(dice.whole(0, 9))).join("");
  return ones === 0 && /^0*$/.test(digits) ? "1.5" : `${String(ones)}.${digits}`;
}

/** Parts per million as a percent, with up to four decimals. */
export function percentText(dice: Dice, partsPerMillion: number): string {
  const fixed = `${String(Math.floor(partsPerMillion / 10_000))}.${String(partsPerMillion % 10_000).padStart(4, "0")}`;
  return chance(dice, 20) ? fixed : fixed.replace(/\.?0+$/, "");
}

const MILLISECONDS_A_DAY = 86_400_000;

/** The date so many days after another. */
export const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * MILLISECONDS_A_DAY).toISOString().slice(0, 10);
