/** The faults of a file as a screen lists them: what is wrong in the same way is one line. */

const MISSING_LIST = /^(\w+): missing; it must be a list$/;
const MORE = /^and (\d+) more faults?$/;

/** Lists that are not there at all as one line, in the place of the first of them. */
export function faultsGathered(faults: readonly string[]): readonly string[] {
  const missing = faults.flatMap((fault) => MISSING_LIST.exec(fault)?.[1] ?? []);
  if (missing.length < 2) return faults;
  const gathered = `${missing.join(", ")}: missing; each must be a list`;
  const first = faults.findIndex((fault) => MISSING_LIST.test(fault));
  return faults.flatMap((fault, at) => (at === first ? [gathered] : MISSING_LIST.test(fault) ? [] : [fault]));
}

/** How many faults there are, those counted that are not listed. */
export function faultsCounted(faults: readonly string[]): number {
  const more = MORE.exec(faults.at(-1) ?? "")?.[1];
  return more === undefined ? faults.length : faults.length - 1 + Number(more);
}
