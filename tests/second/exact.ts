/** Exact fractions, decimals, units and rounding of the second implementation. Nothing here comes from the product. */

/** [over, under], always in lowest terms with `under` above zero. */
export type Exact = readonly [bigint, bigint];

export function exact(over: bigint, under = 1n): Exact {
  let [a, b] = [over < 0n ? -over : over, under < 0n ? -under : under];
  while (b > 0n) [a, b] = [b, a % b];
  const sign = under < 0n ? -1n : 1n;
  return [(sign * over) / a, (sign * under) / a];
}

export const NONE: Exact = [0n, 1n];
export const add = (a: Exact, b: Exact): Exact => exact(a[0] * b[1] + b[0] * a[1], a[1] * b[1]);
export const multiply = (a: Exact, b: Exact): Exact => exact(a[0] * b[0], a[1] * b[1]);
export const divide = (a: Exact, b: Exact): Exact => exact(a[0] * b[1], a[1] * b[0]);
export const addAll = (parts: readonly Exact[]): Exact => parts.reduce(add, NONE);
export const isLess = (a: Exact, b: Exact): boolean => a[0] * b[1] < b[0] * a[1];

/** The next whole number at or above a fraction that is not below zero. */
export const upward = ([over, under]: Exact): bigint => (over + under - 1n) / under;

/** Nearest whole number of a fraction not below zero, halves to the even neighbour. */
export function halfToEven([over, under]: Exact): bigint {
  const below = over / under;
  const rest = 2n * (over - below * under);
  if (rest < under) return below;
  if (rest > under) return below + 1n;
  return below % 2n === 0n ? below : below + 1n;
}

/** Nearest whole number of a fraction not below zero, halves upwards, which is away from zero. */
export const halfUp = ([over, under]: Exact): bigint => (2n * over + under) / (2n * under);

/** "12.5" as a fraction. */
export function decimal(text: string): Exact {
  const [ones = "0", rest = ""] = text.split(".");
  return exact(BigInt(ones + rest), 10n ** BigInt(rest.length));
}

/** A percent as a share of one; nothing typed is no share. */
export const percent = (text: string | null | undefined): Exact => divide(decimal(text ?? "0"), [100n, 1n]);

/** Money typed, in millionths of the major unit. */
export const money = (text: string | null | undefined): Exact => multiply(decimal(text ?? "0"), [1_000_000n, 1n]);

// Grams and millilitres of one unit. NIST SP 811 (2008), Appendix B.8; Weights and Measures Act 1985 (UK), Schedule 1.
const GRAMS: Readonly<Record<string, string>> = {
  mg: "0.001",
  g: "1",
  kg: "1000",
  oz: "28.349523125",
  lb: "453.59237",
};
const MILLILITRES: Readonly<Record<string, string>> = {
  mL: "1",
  L: "1000",
  "floz-us": "29.5735295625",
  "gal-us": "3785.411784",
  "floz-uk": "28.4130625",
  "gal-uk": "4546.09",
};

/** "250 mL" as whole µg (or pieces), by the density in g/mL, rounded once, half to even. */
export function quantity(text: string, density: string | null | undefined): bigint {
  const [number = "", unit = ""] = text.split(" ");
  if (unit === "each") return BigInt(number);
  const grams = GRAMS[unit];
  if (grams !== undefined) return halfToEven(multiply(multiply(decimal(number), decimal(grams)), [1_000_000n, 1n]));
  const millilitres = MILLILITRES[unit];
  if (millilitres === undefined || density === null || density === undefined) throw new Error(`cannot weigh ${text}`);
  const volume = multiply(decimal(number), decimal(millilitres));
  return halfToEven(multiply(multiply(volume, decimal(density)), [1_000_000n, 1n]));
}

/** A whole number of 10^-decimals as a decimal with all its places. */
function placed(whole: bigint, decimals: number): string {
  const digits = whole.toString().padStart(decimals + 1, "0");
  const point = digits.length - decimals;
  return decimals === 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`;
}

const withoutTrailingZeros = (text: string): string => text.replace(/0+$/, "").replace(/\.$/, "");

/** A quantity as the report prints it: grams or pieces, up to six decimals, half to even. */
export function quantityText(amount: Exact, measure: "mass" | "count"): string {
  const millionths = measure === "mass" ? amount : multiply(amount, [1_000_000n, 1n]);
  return `${withoutTrailingZeros(placed(halfToEven(millionths), 6))} ${measure === "mass" ? "g" : "each"}`;
}

// ISO 4217 list one, the currencies whose minor unit has other than two decimals.
const NOT_TWO_DECIMALS: Readonly<Record<number, string>> = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
  3: "BHD IQD JOD KWD LYD OMR TND",
  4: "CLF UYW",
};

function moneyText(microUnits: Exact, currency: string, more: number): string {
  const listed = Object.entries(NOT_TWO_DECIMALS).find(([, codes]) => codes.split(" ").includes(currency));
  const decimals = (listed === undefined ? 2 : Number(listed[0])) + more;
  return placed(halfUp(multiply(microUnits, [10n ** BigInt(decimals), 1_000_000n])), decimals);
}

/** A cost as the report prints it: two decimals more than the currency has, half away from zero. */
export const costText = (microUnits: Exact, currency: string): string => moneyText(microUnits, currency, 2);

/** Cash as the report prints it: the currency's own decimals. */
export const cashText = (microUnits: Exact, currency: string): string => moneyText(microUnits, currency, 0);

/** Ids in order of their code points. */
export function byCodePoint(a: string, b: string): number {
  const [left, right] = [[...a], [...b]].map((text) => text.map((character) => character.codePointAt(0) ?? 0));
  for (let place = 0; ; place += 1) {
    const [one, other] = [left?.[place], right?.[place]];
    if (one === undefined || other === undefined) return (left?.length ?? 0) - (right?.length ?? 0);
    if (one !== other) return one - other;
  }
}
