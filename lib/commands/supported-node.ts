/**
 * Whether a version of Node is in the ranges of package.json, such as `^20.19.0 || >=26.0.0`: a caret stays within the
 * first number, `>=` does not.
 */
export const isSupportedNode = (version: string, ranges: string): boolean =>
  ranges.split("||").some((range) => isWithin(numbersOf(version), range.trim()));

function isWithin(version: readonly number[], range: string): boolean {
  const least = numbersOf(range.replace(/^(\^|>=)/, ""));
  return !isBelow(version, least) && (range.startsWith(">=") || version[0] === least[0]);
}

const numbersOf = (version: string): readonly number[] => version.replace(/^v/, "").split(".").map(Number);

function isBelow(version: readonly number[], least: readonly number[]): boolean {
  const differs = least.findIndex((number, index) => version[index] !== number);
  return differs >= 0 && (version[differs] ?? 0) < (least[differs] ?? 0);
}
